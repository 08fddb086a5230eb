package lampwright.app.workshop.model.problems;

import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.words.PlaceWords;
import lampwright.engine.document.Project;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Moment;
import lampwright.engine.review.Subject;

/**
 * One line of the list of findings.
 *
 * @param finding what there is to say
 * @param place where that is, by the names of the project
 * @param target the spot that it leads to
 */
public record ProblemRow(Finding finding, String place, Target target) {
  static ProblemRow of(Project project, Finding finding) {
    return new ProblemRow(finding, PlaceWords.of(project, finding), target(finding));
  }

  private static Target target(Finding finding) {
    Subject about = finding.subject();
    if (about instanceof Subject.OneLamp lamp) {
      return new Target.OfLamp(lamp.id());
    } else if (about instanceof Subject.OneChain chain) {
      return new Target.OfChain(chain.id());
    } else if (about instanceof Subject.OneOutput output) {
      return new Target.OfOutput(output.id());
    } else if (about instanceof Subject.OneInput input) {
      return new Target.OfInput(input.id());
    } else if (about instanceof Subject.OneSituation situation) {
      return new Target.OfSituation(situation.id());
    } else if (about instanceof Subject.OneCue cue) {
      return new Target.OfCue(cue.scene(), new CueRef(cue.track(), cue.cue()));
    } else if (about instanceof Subject.OneScene scene) {
      return new Target.OfScene(scene.id());
    } else if (about instanceof Subject.AllChains) {
      return new Target.OfRig(Target.RigPart.CHAINS);
    } else if (about instanceof Subject.Chip) {
      return new Target.OfRig(Target.RigPart.CONTROLLER);
    } else if (about instanceof Subject.Pack) {
      return new Target.OfRig(Target.RigPart.BATTERY);
    } else if (about instanceof Subject.Supply) {
      return new Target.OfRig(Target.RigPart.SUPPLY);
    }
    return finding
        .moment()
        .map(Moment::scene)
        .<Target>map(Target.OfScene::new)
        .orElse(new Target.OfRig(Target.RigPart.SUPPLY));
  }
}
