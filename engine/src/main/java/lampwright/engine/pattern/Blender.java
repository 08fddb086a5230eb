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
    double light = curve.light(clamp(fromLevel * (1 - u) + toLevel * u));
    for (int i = 0; i < from.length; i++) {
      drives[i] = clamp(from[i] * (1 - u) + to[i] * u) * light;
    }
  }

  private static double clamp(double v) {
    return Math.min(1, Math.max(0, v));
  }
}
