package lampwright.exporters.picture;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.light.SrgbSpace;
import lampwright.engine.render.FrameTable;

/**
 * How bright each lamp is over a scene, for paper without colours: the relative luminance of its
 * pixels at so many places from the scene's start to its end.
 */
public final class LightTraces {
  /**
   * One lamp.
   *
   * @param pixels for each of its pixels the luminance at each place, 1 the most that any of its
   *     pixels has in the scene; 0 where the lamp is dark throughout
   */
  public record OfLamp(List<float[]> pixels) {
    public OfLamp {
      pixels = List.copyOf(pixels);
    }

    /** Whether it is lit at all. */
    public boolean isLit() {
      return pixels.stream().anyMatch(LightTraces::isLit);
    }
  }

  private LightTraces() {}

  /**
   * Renders a scene once and finds the traces, in rig order.
   *
   * @param width how many places, from 1
   * @throws java.util.concurrent.CancellationException if the thread is interrupted
   */
  public static List<OfLamp> of(FrameTable table, int width) {
    ScreenLight screen = ScreenLight.of(table.layout());
    float[][][] luminance = new float[screen.lamps().size()][][];
    for (int lamp = 0; lamp < luminance.length; lamp++) {
      luminance[lamp] = new float[screen.pixels(lamp)][width];
    }
    MeanLight.walk(
        table,
        screen,
        width,
        (lamp, pixel, x, red, green, blue) ->
            luminance[lamp][pixel][x] = (float) SrgbSpace.y(red, green, blue));
    List<OfLamp> lamps = new ArrayList<>();
    for (float[][] pixels : luminance) {
      scale(pixels);
      lamps.add(new OfLamp(List.of(pixels)));
    }
    return lamps;
  }

  private static void scale(float[][] pixels) {
    float most = 0;
    for (float[] pixel : pixels) {
      for (float light : pixel) {
        most = Math.max(most, light);
      }
    }
    for (float[] pixel : pixels) {
      for (int x = 0; x < pixel.length; x++) {
        pixel[x] = most > 0 ? Math.max(0, pixel[x]) / most : 0;
      }
    }
  }

  private static boolean isLit(float[] pixel) {
    for (float light : pixel) {
      if (light > 0) {
        return true;
      }
    }
    return false;
  }
}
