package lampwright.engine.meter;

/** CIE XYZ to linear sRGB (IEC 61966-2-1). */
final class SrgbLight {
  private SrgbLight() {}

  /** Replaces X, Y, Z at a place by linear red, green, blue, for a white of the given Y. */
  static void fromXyz(double[] values, int at, double white) {
    double x = values[at] / white;
    double y = values[at + 1] / white;
    double z = values[at + 2] / white;
    values[at] = 3.2406 * x - 1.5372 * y - 0.4986 * z;
    values[at + 1] = -0.9689 * x + 1.8758 * y + 0.0415 * z;
    values[at + 2] = 0.0557 * x - 0.2040 * y + 1.0570 * z;
  }
}
