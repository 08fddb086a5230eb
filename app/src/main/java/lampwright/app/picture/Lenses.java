package lampwright.app.picture;

/** Paints the unlit lenses of pixels on a drawing. */
public final class Lenses {
  private Lenses() {}

  /**
   * Paints a disc with soft edges.
   *
   * @param argb opaque colours of the drawing, row by row; changed
   * @param rgb the colour of the disc
   */
  public static void disc(int[] argb, int width, int height, Dots.Dot lens, int rgb) {
    double r = lens.radius();
    int x0 = Math.max(0, (int) Math.floor(lens.x() - r - 1));
    int x1 = Math.min(width - 1, (int) Math.ceil(lens.x() + r + 1));
    int y0 = Math.max(0, (int) Math.floor(lens.y() - r - 1));
    int y1 = Math.min(height - 1, (int) Math.ceil(lens.y() + r + 1));
    for (int y = y0; y <= y1; y++) {
      for (int x = x0; x <= x1; x++) {
        double away = Math.hypot(x + 0.5 - lens.x(), y + 0.5 - lens.y());
        double share = Math.max(0, Math.min(1, r - away + 0.5));
        if (share > 0) {
          argb[y * width + x] = mixed(argb[y * width + x], rgb, share);
        }
      }
    }
  }

  private static int mixed(int under, int over, double share) {
    int mixed = 0xFF000000;
    for (int shift = 0; shift <= 16; shift += 8) {
      double of = (under >> shift & 0xFF) * (1 - share) + (over >> shift & 0xFF) * share;
      mixed |= (int) Math.round(of) << shift;
    }
    return mixed;
  }
}
