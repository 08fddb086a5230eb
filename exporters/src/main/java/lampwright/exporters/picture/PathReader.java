package lampwright.exporters.picture;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads path data, and follows its lines. */
final class PathReader {
  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,6}(?:\\.\\d{1,6})?(?![\\d.])");
  private static final Pattern GAP = Pattern.compile("[ ,]*");

  /** Points along a curve: enough for a hundredth of a unit in drawings of some hundred units. */
  private static final int STEPS = 64;

  private final String text;
  private final Matcher number;
  private final Matcher gap;
  private int at;
  private double x;
  private double y;
  private double startX;
  private double startY;
  private boolean begun;
  private final PathData.Trace trace;

  private PathReader(String text, PathData.Trace trace) {
    this.text = text;
    this.trace = trace;
    this.number = NUMBER.matcher(text);
    this.gap = GAP.matcher(text);
  }

  /** Follows all lines. */
  static void follow(String text, PathData.Trace trace) {
    PathReader reader = new PathReader(text, trace);
    reader.skipGap();
    while (reader.at < text.length()) {
      reader.command(text.charAt(reader.at++));
      reader.skipGap();
    }
    if (!reader.begun) {
      throw reader.wrong("no lines");
    }
  }

  private void command(char letter) {
    if (!begun && letter != 'M') {
      throw wrong("needs M first");
    }
    switch (letter) {
      case 'M' -> {
        x = number();
        y = number();
        startX = x;
        startY = y;
        begun = true;
        trace.begin(x, y);
      }
      case 'L' -> to(number(), number());
      case 'H' -> to(number(), y);
      case 'V' -> to(x, number());
      case 'Q' -> quadratic(number(), number(), number(), number());
      case 'C' -> cubic(number(), number(), number(), number(), number(), number());
      case 'A' -> arc(number(), number(), number(), flag(), flag(), number(), number());
      case 'Z' -> {
        x = startX;
        y = startY;
        trace.close();
      }
      default -> throw wrong(letter + ": needs M, L, H, V, C, Q, A or Z");
    }
  }

  private void to(double nextX, double nextY) {
    x = nextX;
    y = nextY;
    trace.line(x, y);
  }

  private void quadratic(double x1, double y1, double endX, double endY) {
    double fromX = x;
    double fromY = y;
    for (int k = 1; k <= STEPS; k++) {
      double t = (double) k / STEPS;
      double u = 1 - t;
      to(
          u * u * fromX + 2 * u * t * x1 + t * t * endX,
          u * u * fromY + 2 * u * t * y1 + t * t * endY);
    }
  }

  private void cubic(double x1, double y1, double x2, double y2, double endX, double endY) {
    double fromX = x;
    double fromY = y;
    for (int k = 1; k <= STEPS; k++) {
      double t = (double) k / STEPS;
      double u = 1 - t;
      double a = u * u * u;
      double b = 3 * u * u * t;
      double c = 3 * u * t * t;
      double d = t * t * t;
      to(a * fromX + b * x1 + c * x2 + d * endX, a * fromY + b * y1 + c * y2 + d * endY);
    }
  }

  /** SVG 2, appendix B.2.4: from end points to a centre and angles. */
  private void arc(
      double radiusX,
      double radiusY,
      double turnDegrees,
      boolean large,
      boolean sweep,
      double endX,
      double endY) {
    double rx = Math.abs(radiusX);
    double ry = Math.abs(radiusY);
    if (rx == 0 || ry == 0) {
      to(endX, endY);
      return;
    }
    double turn = Math.toRadians(turnDegrees);
    double cos = Math.cos(turn);
    double sin = Math.sin(turn);
    double halfX = (x - endX) / 2;
    double halfY = (y - endY) / 2;
    double px = (cos * halfX + sin * halfY) / rx;
    double py = (cos * halfY - sin * halfX) / ry;
    double square = px * px + py * py;
    double grown = Math.sqrt(Math.max(1, square));
    double centre = Math.sqrt(Math.max(0, 1 / square * grown * grown - 1));
    double side = large == sweep ? -centre : centre;
    // In units of the radii, about the middle of the end points, before the turn.
    double cx = side * py / grown;
    double cy = -side * px / grown;
    double from = Math.atan2(py / grown - cy, px / grown - cx);
    double angle = Math.atan2(-py / grown - cy, -px / grown - cx) - from;
    if (sweep && angle < 0) {
      angle += 2 * Math.PI;
    } else if (!sweep && angle > 0) {
      angle -= 2 * Math.PI;
    }
    double middleX = (x + endX) / 2;
    double middleY = (y + endY) / 2;
    for (int k = 1; k < STEPS; k++) {
      double a = from + angle * k / STEPS;
      double ex = (cx + Math.cos(a)) * rx * grown;
      double ey = (cy + Math.sin(a)) * ry * grown;
      to(cos * ex - sin * ey + middleX, sin * ex + cos * ey + middleY);
    }
    to(endX, endY);
  }

  private double number() {
    skipGap();
    if (!number.region(at, text.length()).lookingAt()) {
      throw wrong("needs a number");
    }
    at = number.end();
    return Double.parseDouble(number.group());
  }

  private boolean flag() {
    double value = number();
    if (value != 0 && value != 1) {
      throw wrong("needs 0 or 1");
    }
    return value == 1;
  }

  private void skipGap() {
    if (gap.region(at, text.length()).lookingAt()) {
      at = gap.end();
    }
  }

  private IllegalArgumentException wrong(String why) {
    return new IllegalArgumentException("path data, character " + at + ": " + why);
  }
}
