package lampwright.engine.pattern;

import lampwright.engine.light.Curve;
import lampwright.engine.light.LinearMix;
import lampwright.engine.light.Mix;
import lampwright.engine.light.Mixer;

/** Mixes two colours, and two levels, by a share. For one thread. */
final class Blender {
  private final Curve curve;
  private final double[] from = new double[Mixer.SLOTS];
  private final double[] to = new double[Mixer.SLOTS];

  Blender(Curve curve) {
    this.curve = curve;
  }

  /**
   * Writes the mix of the drives of two colours, each at the light of the mixed levels.
   *
   * @param starts the first colour as each pixel mixes it
   * @param ends the second colour likewise
   * @param u 0 for the first, 1 for the second; beyond either the result is kept within 0 to 1
   */
  void mix(
      Mix[] starts, Mix[] ends, double startLevel, double endLevel, double u, double[] drives) {
    double light = curve.light(between(startLevel, endLevel, u));
    for (int k = 0; k < starts.length; k++) {
      int at = k * Mixer.SLOTS;
      if (k > 0 && starts[k] == starts[k - 1] && ends[k] == ends[k - 1]) {
        System.arraycopy(drives, at - Mixer.SLOTS, drives, at, Mixer.SLOTS);
        continue;
      }
      // Drives that go with the light are mixed at full light, so that nothing is rounded twice.
      boolean linear = starts[k] instanceof LinearMix && ends[k] instanceof LinearMix;
      starts[k].write(linear ? 1 : light, from, 0);
      ends[k].write(linear ? 1 : light, to, 0);
      for (int i = 0; i < Mixer.SLOTS; i++) {
        double mixed = between(from[i], to[i], u);
        drives[at + i] = linear ? mixed * light : mixed;
      }
    }
  }

  private static double between(double from, double to, double u) {
    // Equal values mix to themselves, whatever rounding makes of the parts.
    return from == to ? from : Math.min(1, Math.max(0, from * (1 - u) + to * u));
  }
}
