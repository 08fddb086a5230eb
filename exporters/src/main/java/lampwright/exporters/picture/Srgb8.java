package lampwright.exporters.picture;

/** Linear light to the bytes of a screen, and back: IEC 61966-2-1, by table. */
public final class Srgb8 {
  private static final int STEPS = 4096;
  private static final byte[] CODES = new byte[STEPS + 1];
  private static final float[] LIGHT = new float[256];

  static {
    for (int code = 0; code < LIGHT.length; code++) {
      double v = code / 255.0;
      LIGHT[code] = (float) (v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4));
    }
    for (int i = 0; i <= STEPS; i++) {
      double light = (double) i / STEPS;
      double code = light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
      CODES[i] = (byte) Math.round(255 * code);
    }
  }

  private Srgb8() {}

  /** The code value, 0 to 255, of linear light; below 0 and above 1 it is clipped. */
  public static int code(float light) {
    // Written so that NaN is dark.
    if (!(light > 0)) {
      return 0;
    }
    return CODES[light >= 1 ? STEPS : (int) (light * STEPS + 0.5f)] & 0xFF;
  }

  /**
   * The linear light of a code value: the decoding of IEC 61966-2-1.
   *
   * @param code 0 to 255
   */
  public static float linear(int code) {
    return LIGHT[code];
  }

  /**
   * Brings linear light that sRGB can't show within it, at {@code rgb[at .. at + 2]}: as much white
   * is added as the component most below 0 lacks, so that the hue stays; clipping would turn a
   * green of 520 nm by 13 degrees.
   */
  public static void lift(float[] rgb, int at) {
    float least = Math.min(rgb[at], Math.min(rgb[at + 1], rgb[at + 2]));
    if (least < 0) {
      for (int c = at; c < at + 3; c++) {
        rgb[c] -= least;
      }
    }
  }

  /**
   * The opaque ARGB value of linear light. Light below 0 is {@linkplain #lift lifted}. Light past 1
   * keeps its hue: all three are scaled, so that a red lamp is red and a blue one blue however
   * bright it is.
   */
  public static int argb(float r, float g, float b) {
    // As lift() does, without an array: this is asked for every pixel that is painted.
    float lift = Math.max(0, -Math.min(r, Math.min(g, b)));
    float most = Math.max(r, Math.max(g, b)) + lift;
    float scale = most > 1 ? 1 / most : 1;
    return 0xFF000000
        | code((r + lift) * scale) << 16
        | code((g + lift) * scale) << 8
        | code((b + lift) * scale);
  }
}
