package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.scene.Scene;

/** The values of a scene. */
public final class SceneSettings {
  private SceneSettings() {}

  /** All but its id, tracks, markers and guide sound. */
  public static List<Setting<Scene, ?>> all() {
    return ShapeSettings.of(Scene.SHAPE)
        .without(Scene.ID, Scene.TRACKS, Scene.MARKERS, Scene.GUIDE_SOUND)
        .own(Scene.LENGTH_MS, FieldSettings.of(Scene.LENGTH_MS, "scene.lengthMs"))
        .own(Scene.LOOP, FieldSettings.of(Scene.LOOP, "scene.loop"))
        .list();
  }
}
