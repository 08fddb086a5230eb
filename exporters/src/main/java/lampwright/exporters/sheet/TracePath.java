package lampwright.exporters.sheet;

import java.util.List;
import java.util.Locale;
import lampwright.exporters.picture.LightTraces;

/**
 * The trace of a lamp as an inline SVG: grey on white, its height the lightness (CIE 1976 L*) of
 * the light relative to the lamp's brightest in the scene. Pixels are one below the other, or as
 * their mean where they are many.
 */
final class TracePath {
  /** Lamps of so many pixels have a row for each. */
  static final int ROWS = 8;

  /** Dark enough to be seen, and no waste of toner: the height is what counts. */
  private static final String INK = "#666666";

  private static final int WIDTH = SheetCharts.PLACES;
  private static final double ONE_ROW = 15;
  private static final double LEAST_ROW = 6;
  private static final double GAP = 1;

  // CIE 15: L* = 116 (Y)^(1/3) - 16 above (6/29)^3, else (29/3)^3 Y.
  private static final double LINEAR_BELOW = Math.pow(6.0 / 29, 3);
  private static final double LINEAR = Math.pow(29.0 / 3, 3);

  private TracePath() {}

  static boolean isMean(LightTraces.OfLamp lamp) {
    return lamp.pixels().size() > ROWS;
  }

  /** The drawing; nothing in it comes from a project's texts. */
  static String svg(LightTraces.OfLamp lamp) {
    List<float[]> rows = isMean(lamp) ? List.of(mean(lamp.pixels())) : lamp.pixels();
    double high = Math.max(LEAST_ROW, ONE_ROW / rows.size() + (rows.size() > 1 ? 1 : 0));
    double all = rows.size() * (high + GAP);
    StringBuilder svg = new StringBuilder();
    svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"trace\" viewBox=\"0 0 ")
        .append(WIDTH)
        .append(' ')
        .append(number(all))
        .append("\" width=\"")
        .append(WIDTH)
        .append("\" height=\"")
        .append(number(all))
        .append("\" preserveAspectRatio=\"none\">");
    for (int i = 0; i < rows.size(); i++) {
      svg.append("<path fill=\"" + INK + "\" d=\"")
          .append(path(rows.get(i), i * (high + GAP), high))
          .append("\"/>");
    }
    return svg.append("</svg>").toString();
  }

  // A line along the ground, and the light above it.
  private static String path(float[] light, double top, double high) {
    double ground = top + high;
    StringBuilder path = new StringBuilder("M0 ").append(number(ground + 0.4));
    path.append(" V").append(number(ground));
    double at = ground;
    for (int x = 0; x < light.length; x++) {
      double y = ground - high * lightness(light[x]);
      if (!number(y).equals(number(at))) {
        path.append(" H").append(x).append(" V").append(number(y));
        at = y;
      }
    }
    return path.append(" H")
        .append(light.length)
        .append(" V")
        .append(number(ground + 0.4))
        .append(" Z")
        .toString();
  }

  private static float[] mean(List<float[]> pixels) {
    float[] mean = new float[pixels.get(0).length];
    for (float[] pixel : pixels) {
      for (int x = 0; x < mean.length; x++) {
        mean[x] += pixel[x] / pixels.size();
      }
    }
    return mean;
  }

  private static double lightness(double y) {
    return (y > LINEAR_BELOW ? 116 * Math.cbrt(y) - 16 : LINEAR * y) / 100;
  }

  // Rounded to tenths, so that a last bit of a cube root changes nothing.
  private static String number(double value) {
    String text = String.format(Locale.ROOT, "%.1f", value);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }
}
