package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.scene.Scene;

/** The values of a scene. */
public final class SceneSettings {
  private SceneSettings() {}

  /** All but its id and tracks. */
  public static List<Setting<Scene, ?>> all() {
    return List.of(
        FieldSettings.of(Scene.LENGTH_MS, "scene.lengthMs"),
        FieldSettings.of(Scene.FRAMES_PER_SECOND),
        FieldSettings.of(Scene.LOOP, "scene.loop"),
        FieldSettings.of(Scene.DITHER));
  }
}
