package lampwright.engine.light;

/** Linear sRGB and CIE XYZ (IEC 61966-2-1); white has Y = 1. */
public final class SrgbSpace {
  // IEC 61966-2-1, 5.2: linear RGB to XYZ.
  private static final double XR = 0.4124;
  private static final double XG = 0.3576;
  private static final double XB = 0.1805;
  private static final double YR = 0.2126;
  private static final double YG = 0.7152;
  private static final double YB = 0.0722;
  private static final double ZR = 0.0193;
  private static final double ZG = 0.1192;
  private static final double ZB = 0.9505;

  private SrgbSpace() {}

  /** CIE X of linear sRGB. */
  public static double x(double r, double g, double b) {
    return XR * r + XG * g + XB * b;
  }

  /** CIE Y of linear sRGB, its relative luminance. */
  public static double y(double r, double g, double b) {
    return YR * r + YG * g + YB * b;
  }

  /** CIE Z of linear sRGB. */
  public static double z(double r, double g, double b) {
    return ZR * r + ZG * g + ZB * b;
  }

  /** Linear sRGB's red of XYZ, as {@link #fromXyz}. */
  public static double red(double x, double y, double z) {
    return 3.2406 * x - 1.5372 * y - 0.4986 * z;
  }

  /** Linear sRGB's green of XYZ, as {@link #fromXyz}. */
  public static double green(double x, double y, double z) {
    return -0.9689 * x + 1.8758 * y + 0.0415 * z;
  }

  /** Linear sRGB's blue of XYZ, as {@link #fromXyz}. */
  public static double blue(double x, double y, double z) {
    return 0.0557 * x - 0.2040 * y + 1.0570 * z;
  }

  /**
   * Writes linear sRGB to {@code into[at .. at + 2]}; below 0 or above 1 where sRGB can't show the
   * colour. The matrix is IEC 61966-2-1's for this way, in the four digits of the standard.
   */
  public static void fromXyz(double x, double y, double z, double[] into, int at) {
    into[at] = red(x, y, z);
    into[at + 1] = green(x, y, z);
    into[at + 2] = blue(x, y, z);
  }
}
