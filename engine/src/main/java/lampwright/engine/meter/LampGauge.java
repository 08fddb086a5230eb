package lampwright.engine.meter;

import java.util.Arrays;
import java.util.List;

/**
 * Finds the pixel of a lamp that shines brightest, and adds the whole lamp to the model's light.
 */
final class LampGauge implements FrameGauge {
  private final List<LampLight> pixels;
  private final double[] peak;
  private final double[] xyz = new double[3];

  LampGauge(List<LampLight> pixels) {
    this.pixels = pixels;
    peak = new double[pixels.size()];
  }

  @Override
  public void frame(int number, byte[] frame) {
    for (int k = 0; k < peak.length; k++) {
      Arrays.fill(xyz, 0);
      pixels.get(k).add(frame, xyz, 0);
      peak[k] = Math.max(peak[k], xyz[1]);
    }
  }

  /** The pixel that shone brightest so far; of several the first. */
  LampLight brightest() {
    int brightest = 0;
    for (int k = 1; k < peak.length; k++) {
      if (peak[k] > peak[brightest]) {
        brightest = k;
      }
    }
    return pixels.get(brightest);
  }
}
