package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Join;
import lampwright.engine.situation.Situation;
import lampwright.engine.situation.Trigger;

/** The values of a situation. */
public final class SituationSettings {
  private SituationSettings() {}

  /** All but its id and its conditions. */
  public static List<Setting<Situation, ?>> of(Project project) {
    List<String> scenes = project.scenes().stream().map(Scene::id).toList();
    return ShapeSettings.of(Situation.SHAPE)
        .without(Situation.ID)
        .own(Situation.PRIORITY, FieldSettings.of(Situation.PRIORITY, "situation.priority"))
        .own(
            Situation.SCENE,
            new Setting<>(
                "situation.scene",
                new Kind.Maybe<>(
                    new Kind.Choice<>("sceneId", scenes, (String id) -> id),
                    scenes.isEmpty() ? "" : scenes.get(0)),
                Situation::scene,
                Situation.SCENE::with))
        .own(Situation.START, FieldSettings.of(Situation.START, "situation.start"))
        .own(Situation.AFTER_MS, FieldSettings.of(Situation.AFTER_MS, "situation.afterMs"))
        .own(Situation.LINGER_MS, FieldSettings.of(Situation.LINGER_MS, "situation.lingerMs"))
        .own(Situation.TOGGLE, FieldSettings.of(Situation.TOGGLE, "situation.toggle"))
        .own(Situation.TRIGGER, List.of())
        .list();
  }

  /** How many of the conditions have to be on. */
  public static Setting<Situation, Join> join() {
    return new Setting<>(
        "situation.join",
        new Kind.Choice<>("join", List.of(Join.values()), Join::key),
        s -> s.trigger().join(),
        (s, join) -> Situation.TRIGGER.with(s, new Trigger(join, s.trigger().conditions())));
  }
}
