package lampwright.engine.pattern;

import lampwright.engine.light.Curve;

/** Mixes two sets of drives, and two levels, by a share. */
final class Blender {
  private Blender() {}

  /**
   * Writes the mix of two colours' drives, scaled by the mix of two levels.
   *
   * @param u 0 for the first, 1 for the second; beyond either the result is kept within 0 to 1
   */
  static void mix(
      double[] from,
      double[] to,
      double fromLevel,
      double toLevel,
      double u,
      Curve curve,
      double[] drives) {
    double light = curve.light(between(fromLevel, toLevel, u));
    for (int i = 0; i < from.length; i++) {
      drives[i] = between(from[i], to[i], u) * light;
    }
  }

  private static double between(double from, double to, double u) {
    // Equal values mix to themselves, whatever rounding makes of the parts.
    return from == to ? from : Math.min(1, Math.max(0, from * (1 - u) + to * u));
  }
}
