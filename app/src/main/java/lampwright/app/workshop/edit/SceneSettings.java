package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;

/** The values of a scene. The ranges are those of the record. */
public final class SceneSettings {
  private SceneSettings() {}

  /** All but its id. */
  public static List<Setting<Scene, ?>> all() {
    return List.of(
        new Setting<>(
            "scene.lengthMs",
            Kind.Amount.of("ms", 1, 86_400_000, 100),
            Scene::lengthMs,
            Scene::withLengthMs),
        new Setting<>(
            "framesPerSecond",
            Kind.Amount.of("perSecond", 1, 1000, 1),
            Scene::framesPerSecond,
            Scene::withFramesPerSecond),
        new Setting<>("scene.loop", new Kind.Flag(), Scene::loop, Scene::withLoop),
        new Setting<>(
            "dither",
            new Kind.Choice<>("dither", List.of(Dither.values()), Dither::key),
            Scene::dither,
            Scene::withDither));
  }
}
