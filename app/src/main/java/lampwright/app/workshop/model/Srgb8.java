package lampwright.app.workshop.model;

/** Linear light to the bytes of a screen: IEC 61966-2-1, by table. */
public final class Srgb8 {
  private static final int STEPS = 4096;
  private static final byte[] CODES = new byte[STEPS + 1];

  static {
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
   * The opaque ARGB value of linear light. Light past 1 keeps its hue as far as it can: all three
   * are scaled, and half of what is lost is added as white, as an eye or a camera that is dazzled
   * sees it.
   */
  public static int argb(float r, float g, float b) {
    float most = Math.max(r, Math.max(g, b));
    if (most <= 1) {
      return 0xFF000000 | code(r) << 16 | code(g) << 8 | code(b);
    }
    float white = Math.min(1, (most - 1) / 2);
    float scale = (1 - white) / most;
    return 0xFF000000
        | code(r * scale + white) << 16
        | code(g * scale + white) << 8
        | code(b * scale + white);
  }
}
