package lampwright.app.workshop.model.drawing;

import java.util.List;
import lampwright.app.picture.Dots;
import lampwright.app.picture.Glow;
import lampwright.app.picture.PaintedFlashes;
import lampwright.app.workshop.model.SceneLight;
import lampwright.engine.meter.FlashCaution;

/**
 * What a drawing paints of a scene at full light.
 *
 * @param light the scene
 * @param glow what it is painted on; only its unlit colours are read
 * @param dots where its lamps are
 * @param exposure by which all light is multiplied
 */
public record Painting(SceneLight light, Glow glow, List<Dots.Dot> dots, float exposure) {
  public Painting {
    dots = List.copyOf(dots);
  }

  /**
   * The flashes of what is painted, as the screen shows them.
   *
   * @throws java.util.concurrent.CancellationException if the thread is interrupted
   */
  FlashCaution flashes() {
    return new PaintedFlashes(
            light.screen(),
            glow,
            dots,
            exposure,
            light.frames().table().framesPerSecond(),
            light.frames().frameCount())
        .ofLoop(flashes -> light.frames().forEach(flashes::frame));
  }
}
