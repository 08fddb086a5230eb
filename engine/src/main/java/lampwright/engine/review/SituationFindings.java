package lampwright.engine.review;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Criterion;
import lampwright.engine.situation.ShowConflicts;
import lampwright.engine.situation.Situation;
import lampwright.engine.situation.SituationReach;

/** What keeps situations from being played, and what of them is probably unintended. */
final class SituationFindings implements Reviewer {
  @Override
  public void project(Project project, Consumer<Finding> found) {
    conflicts(project, found);
    for (int i = 0; i < project.situations().size(); i++) {
      ignored(project.situations().get(i), path(i), found);
    }
    unseen(project, found);
    for (int i = 0; i < project.rig().inputs().size(); i++) {
      input(project, project.rig().inputs().get(i), "rig.inputs[" + i + "]", found);
    }
    if (project.situations().stream().anyMatch(s -> s.scene().isPresent())) {
      lamps(project, found);
    } else if (project.rig().ceiling()) {
      found.accept(
          withoutEffect(
              new Subject.Supply(),
              "rig",
              Rig.CEILING.name(),
              "the current limit of situations",
              "no situation has a scene"));
    }
  }

  private static String path(int situation) {
    return "situations[" + situation + "]";
  }

  private static Subject subject(Project project, int situation) {
    return new Subject.OneSituation(project.situations().get(situation).id());
  }

  private static void conflicts(Project project, Consumer<Finding> found) {
    ShowConflicts conflicts = ShowConflicts.of(project.scenes(), project.situations());
    for (ShowConflicts.UnlikeRate rate : conflicts.rates()) {
      found.accept(
          Finding.of(Code.SITUATION_RATE, subject(project, rate.situation()))
              .with("scene", Figure.words(rate.scene().id()))
              .with("rate", rate(rate.scene()))
              .with("first", Figure.words(rate.first().id()))
              .with("limit", rate(rate.first()))
              .at(path(rate.situation()) + ".scene")
              .make());
    }
    for (ShowConflicts.EqualPriority equal : conflicts.priorities()) {
      Situation situation = project.situations().get(equal.situation());
      found.accept(
          Finding.of(Code.SITUATION_PRIORITY, subject(project, equal.situation()))
              .with("priority", Figure.words(Integer.toString(situation.priority())))
              .with("other", Figure.words(project.situations().get(equal.earlier()).id()))
              .with("lamp", Figure.words(title(project, equal.lamp())))
              .at(path(equal.situation()) + ".priority")
              .make());
    }
  }

  private static Figure rate(Scene scene) {
    return Figure.words(scene.framesPerSecond().toPlainString() + " frames/s");
  }

  private static String title(Project project, String lamp) {
    return project.rig().lamp(lamp).map(Lamp::title).orElse(lamp);
  }

  private static void ignored(Situation situation, String path, Consumer<Finding> found) {
    if (situation.toggle() && situation.lingerMs().signum() > 0) {
      found.accept(
          withoutEffect(
              new Subject.OneSituation(situation.id()),
              path,
              Situation.LINGER_MS.name(),
              "its linger time",
              "a situation with toggle ends when its conditions next begin to hold"));
    }
  }

  private static Finding withoutEffect(
      Subject subject, String path, String field, String words, String reason) {
    return Finding.of(Code.FIELD_WITHOUT_EFFECT, subject)
        .with("setting", Figure.words(words))
        .with("reason", Figure.words(reason))
        .at(path + "." + field)
        .make();
  }

  private static void unseen(Project project, Consumer<Finding> found) {
    List<Optional<SituationReach.Unseen>> all =
        SituationReach.of(project.rig(), project.scenes(), project.situations());
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).isPresent()) {
        found.accept(Finding.of(code(all.get(i).get()), subject(project, i)).at(path(i)).make());
      }
    }
  }

  private static Code code(SituationReach.Unseen why) {
    return switch (why) {
      case NO_TRACK -> Code.SITUATION_WITHOUT_LAMP;
      case IMPOSSIBLE -> Code.SITUATION_IMPOSSIBLE;
      case COVERED -> Code.SITUATION_COVERED;
    };
  }

  private static void input(Project project, Input input, String path, Consumer<Finding> found) {
    Subject subject = new Subject.OneInput(input.id());
    if (input.kind() == InputKind.SWITCH) {
      if (Input.LOST_AFTER_MS.writes(input)) {
        String field = Input.LOST_AFTER_MS.name();
        String words = "its time until the signal is lost";
        found.accept(withoutEffect(subject, path, field, words, "a switch is never lost"));
      }
      if (Input.CENTRE.writes(input)) {
        found.accept(
            withoutEffect(
                subject, path, Input.CENTRE.name(), "its centre", "a switch has no servo pulses"));
      }
      return;
    }
    if (input.activeLow()) {
      found.accept(
          withoutEffect(
              subject,
              path,
              Input.ACTIVE_LOW.name(),
              "active low",
              "servo pulses are always high"));
    }
    boolean watched =
        project.situations().stream()
            .flatMap(situation -> situation.trigger().conditions().stream())
            .anyMatch(condition -> condition.criterion().equals(new Criterion.Lost(input.id())));
    if (!watched) {
      found.accept(Finding.of(Code.INPUT_WITHOUT_LOST, subject).at(path).make());
    }
  }

  private static void lamps(Project project, Consumer<Finding> found) {
    List<Scene> named =
        project.scenes().stream()
            .filter(
                scene ->
                    project.situations().stream()
                        .anyMatch(s -> s.scene().equals(Optional.of(scene.id()))))
            .toList();
    for (int i = 0; i < project.rig().lamps().size(); i++) {
      Lamp lamp = project.rig().lamps().get(i);
      boolean lit =
          named.stream()
              .flatMap(scene -> scene.tracks().stream())
              .anyMatch(track -> track.lamps().contains(lamp.id()));
      if (!lit) {
        found.accept(
            Finding.of(Code.LAMP_IN_NO_SITUATION, Subject.OneLamp.of(lamp))
                .at("rig.lamps[" + i + "]")
                .make());
      }
    }
  }
}
