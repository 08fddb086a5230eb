package lampwright.engine.pattern;

/** Angles in degrees. */
final class Degrees {
  private Degrees() {}

  /** Distance of two angles round the circle, 0 to 180. */
  static double apart(double a, double b) {
    double d = Math.abs(a - b);
    if (d >= 360) {
      // Exact as the remainder is, which takes the machine ten times as long.
      d = d < 720 ? d - 360 : d % 360;
    }
    return d > 180 ? 360 - d : d;
  }

  /**
   * Cosine of 0 to 180 degrees, exact where it is rational, so that a half comes out as a half on
   * every machine.
   */
  static double cos(double degrees) {
    if (degrees > 90) {
      return -cos(180 - degrees);
    }
    if (degrees == 90) {
      return 0;
    }
    return degrees == 60 ? 0.5 : StrictMath.cos(StrictMath.toRadians(degrees));
  }
}
