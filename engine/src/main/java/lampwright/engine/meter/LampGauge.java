package lampwright.engine.meter;

import java.util.List;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Lamp;

/**
 * Finds the pixel of a lamp that shines brightest, and adds the whole lamp to the model's light.
 */
final class LampGauge {
  private final List<LampLight> pixels;
  private final double[] peak;
  private final double[] xyz = new double[3];

  LampGauge(Lamp lamp, FrameLayout layout) {
    pixels = LampLight.pixelsOf(lamp, layout);
    peak = new double[pixels.size()];
  }

  /** Takes one frame; adds the XYZ of the whole lamp to {@code model[at .. at + 2]}. */
  void add(byte[] frame, double[] model, int at) {
    for (int k = 0; k < peak.length; k++) {
      xyz[0] = 0;
      xyz[1] = 0;
      xyz[2] = 0;
      pixels.get(k).add(frame, xyz, 0);
      peak[k] = Math.max(peak[k], xyz[1]);
      for (int i = 0; i < xyz.length; i++) {
        model[at + i] += xyz[i];
      }
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
