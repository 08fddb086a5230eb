package lampwright.app.workshop.model.problems;

import java.util.OptionalInt;
import lampwright.app.workshop.edit.CueRef;
import lampwright.engine.meter.Advice;
import lampwright.engine.meter.Subject;
import lampwright.engine.meter.Weight;
import lampwright.engine.project.ColourReach;
import lampwright.engine.project.Project;
import lampwright.engine.project.SceneCaution;
import lampwright.engine.project.ScenePlace;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/**
 * One line of the list of problems.
 *
 * @param weight how much it matters
 * @param target the spot that it leads to
 * @param frame of the scene on the bench, from 0; none if it belongs to no one frame
 * @param subject the part concerned, in words
 * @param finding what is the case
 * @param limit what it is held against; empty if the finding says it
 * @param source where the limit comes from; empty if it is the project itself
 * @param remedy what can be done; empty if the finding says it
 */
public record ProblemRow(
    Weight weight,
    Target target,
    OptionalInt frame,
    String subject,
    String finding,
    String limit,
    String source,
    String remedy) {
  /** An advice on a scene. */
  static ProblemRow of(Advice advice, String scene) {
    return new ProblemRow(
        advice.weight(),
        target(advice.about(), scene),
        advice.frame(),
        advice.subject(),
        advice.finding(),
        advice.limit(),
        advice.source(),
        advice.remedy());
  }

  private static Target target(Subject about, String scene) {
    if (about instanceof Subject.OneLamp lamp) {
      return new Target.OfLamp(lamp.id());
    } else if (about instanceof Subject.OneChain chain) {
      return new Target.OfChain(chain.id());
    } else if (about instanceof Subject.OneOutput output) {
      return new Target.OfOutput(output.id());
    } else if (about instanceof Subject.AllChains) {
      return new Target.OfRig(Target.RigPart.CHAINS);
    } else if (about instanceof Subject.Chip) {
      return new Target.OfRig(Target.RigPart.CONTROLLER);
    } else if (about instanceof Subject.Pack) {
      return new Target.OfRig(Target.RigPart.BATTERY);
    } else if (about instanceof Subject.Supply) {
      return new Target.OfRig(Target.RigPart.SUPPLY);
    }
    return new Target.OfScene(scene);
  }

  /** A caution on what a project holds. */
  static ProblemRow of(SceneCaution caution, Project project) {
    return new ProblemRow(
        Weight.LOOKS,
        target(caution.place(), project),
        OptionalInt.empty(),
        subject(caution.place(), project),
        caution.fault().value() + " " + caution.fault().allowed(),
        "",
        caution.fault().field(),
        "");
  }

  /** A colour that a lamp can't mix. */
  static ProblemRow of(ColourReach reach, Project project) {
    return new ProblemRow(
        Weight.LOOKS,
        target(reach.place(), project),
        OptionalInt.empty(),
        subject(reach.place(), project),
        reach.finding(),
        "",
        reach.path(),
        "");
  }

  private static Target target(ScenePlace place, Project project) {
    String scene = project.scenes().get(place.scene()).id();
    return place.cue().isPresent()
        ? new Target.OfCue(scene, new CueRef(place.track().orElseThrow(), place.cue().getAsInt()))
        : new Target.OfScene(scene);
  }

  // Tracks have no names: what they drive tells them apart.
  private static String subject(ScenePlace place, Project project) {
    Scene scene = project.scenes().get(place.scene());
    String words = "scene " + scene.id();
    if (place.track().isPresent()) {
      Track track = scene.tracks().get(place.track().getAsInt());
      words += ", " + String.join(" + ", track.lamps());
    }
    return words + (place.cue().isPresent() ? ", cue " + (place.cue().getAsInt() + 1) : "");
  }
}
