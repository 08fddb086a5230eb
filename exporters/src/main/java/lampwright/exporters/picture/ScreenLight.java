package lampwright.exporters.picture;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import lampwright.engine.light.SrgbSpace;
import lampwright.engine.meter.LampLight;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Lamp;

/**
 * How the bytes of a frame look on a screen: through the emitters to CIE XYZ, and on to linear
 * sRGB. One exposure serves the whole rig: the brightest pixel at full duty has luminance 1, so
 * that weak lamps look weak.
 */
public final class ScreenLight {
  private static final double FULL = 255;

  private final List<Lamp> lamps;
  // For each lamp and pixel: the bytes that it shines by, and their linear sRGB at full duty.
  private final int[][][] columns;
  private final float[][][] full;

  private ScreenLight(List<Lamp> lamps, int[][][] columns, float[][][] full) {
    this.lamps = lamps;
    this.columns = columns;
    this.full = full;
  }

  /** The light of a rig's lamps. */
  public static ScreenLight of(FrameLayout layout) {
    Map<String, List<LampLight>> lights = LampLight.ofLamps(layout);
    List<Lamp> lamps = layout.rig().lamps();
    double brightest =
        lights.values().stream()
            .flatMap(List::stream)
            .mapToDouble(light -> light.fullXyz()[1])
            .max()
            .orElse(1);
    double scale = brightest > 0 ? 1 / brightest : 1;
    int[][][] columns = new int[lamps.size()][][];
    float[][][] full = new float[lamps.size()][][];
    for (int i = 0; i < columns.length; i++) {
      List<LampLight> pixels = lights.get(lamps.get(i).id());
      columns[i] = pixels.stream().map(LampLight::columns).toArray(int[][]::new);
      full[i] = pixels.stream().map(light -> linear(light, scale)).toArray(float[][]::new);
    }
    return new ScreenLight(lamps, columns, full);
  }

  // Light adds up, so what each byte adds at full duty is enough to know.
  private static float[] linear(LampLight light, double scale) {
    double[] xyz = light.columnsXyz();
    double[] rgb = new double[xyz.length];
    for (int i = 0; i < xyz.length; i += 3) {
      SrgbSpace.fromXyz(xyz[i] * scale, xyz[i + 1] * scale, xyz[i + 2] * scale, rgb, i);
    }
    float[] narrow = new float[rgb.length];
    IntStream.range(0, rgb.length).forEach(i -> narrow[i] = (float) rgb[i]);
    return narrow;
  }

  /** The lamps, in rig order; others methods count them so. */
  public List<Lamp> lamps() {
    return lamps;
  }

  /** How many pixels a lamp has; 1 for an output. */
  public int pixels(int lamp) {
    return columns[lamp].length;
  }

  /** The bytes of a frame that a pixel shines by. */
  public int[] columns(int lamp, int pixel) {
    return columns[lamp][pixel].clone();
  }

  /**
   * Adds the light of one pixel to {@code into[at .. at + 2]}: linear sRGB, 1 the rig's brightest
   * white; a component is below 0 where sRGB can't show the colour.
   */
  public void addPixel(byte[] frame, int lamp, int pixel, float[] into, int at) {
    int[] own = columns[lamp][pixel];
    float[] light = full[lamp][pixel];
    for (int i = 0; i < own.length; i++) {
      float duty = (float) ((frame[own[i]] & 0xFF) / FULL);
      into[at] += duty * light[3 * i];
      into[at + 1] += duty * light[3 * i + 1];
      into[at + 2] += duty * light[3 * i + 2];
    }
  }
}
