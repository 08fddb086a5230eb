package lampwright.engine.light;

import lampwright.engine.facts.TradeNumbers;

/** Linear sRGB and CIE XYZ (IEC 61966-2-1); white has Y = 1. */
public final class SrgbSpace {
  // Linear RGB to XYZ, and back.
  private static final double XR = number("to XYZ", 0, 0);
  private static final double XG = number("to XYZ", 0, 1);
  private static final double XB = number("to XYZ", 0, 2);
  private static final double YR = number("to XYZ", 1, 0);
  private static final double YG = number("to XYZ", 1, 1);
  private static final double YB = number("to XYZ", 1, 2);
  private static final double ZR = number("to XYZ", 2, 0);
  private static final double ZG = number("to XYZ", 2, 1);
  private static final double ZB = number("to XYZ", 2, 2);
  private static final double RX = number("from XYZ", 0, 0);
  private static final double RY = number("from XYZ", 0, 1);
  private static final double RZ = number("from XYZ", 0, 2);
  private static final double GX = number("from XYZ", 1, 0);
  private static final double GY = number("from XYZ", 1, 1);
  private static final double GZ = number("from XYZ", 1, 2);
  private static final double BX = number("from XYZ", 2, 0);
  private static final double BY = number("from XYZ", 2, 1);
  private static final double BZ = number("from XYZ", 2, 2);

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
    return RX * x + RY * y + RZ * z;
  }

  /** Linear sRGB's green of XYZ, as {@link #fromXyz}. */
  public static double green(double x, double y, double z) {
    return GX * x + GY * y + GZ * z;
  }

  /** Linear sRGB's blue of XYZ, as {@link #fromXyz}. */
  public static double blue(double x, double y, double z) {
    return BX * x + BY * y + BZ * z;
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

  private static double number(String matrix, int row, int column) {
    return TradeNumbers.get("sRGB", matrix).points().get(row).get(column);
  }
}
