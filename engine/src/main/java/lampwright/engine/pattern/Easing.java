package lampwright.engine.pattern;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwright.engine.check.Checks;
import lampwright.engine.field.FormType;

/** How a move from one value to another is spread over its time. */
public sealed interface Easing {
  Easing LINEAR = new Linear();

  /**
   * Progress of the value for progress of the time.
   *
   * @param v 0 to 1
   * @return 0 at the left value, 1 at the right; a cubic Bézier may pass beyond either
   */
  double ease(double v);

  /** The words for this in project files. */
  String text();

  /** Evenly. */
  record Linear() implements Easing {
    @Override
    public double ease(double v) {
      return v;
    }

    @Override
    public String text() {
      return "linear";
    }
  }

  /** The left value until the right one is reached. */
  record Hold() implements Easing {
    @Override
    public double ease(double v) {
      return 0;
    }

    @Override
    public String text() {
      return "hold";
    }
  }

  /** Slow at both ends: 3v^2 - 2v^3. */
  record Smooth() implements Easing {
    @Override
    public double ease(double v) {
      return v * v * (3 - 2 * v);
    }

    @Override
    public String text() {
      return "smooth";
    }
  }

  /**
   * The cubic Bézier of CSS Easing Level 1 from (0, 0) to (1, 1).
   *
   * @param x1 time of the first control point, 0 to 1
   * @param y1 value of the first control point, -10 to 10
   * @param x2 time of the second control point, 0 to 1
   * @param y2 value of the second control point, -10 to 10
   */
  record CubicBezier(double x1, double y1, double x2, double y2) implements Easing {
    public CubicBezier {
      Checks.of("cubic-bezier")
          .range("x1", x1, 0, 1)
          .range("y1", y1, -10, 10)
          .range("x2", x2, 0, 1)
          .range("y2", y2, -10, 10)
          .done();
    }

    @Override
    public double ease(double v) {
      if (v <= 0 || v >= 1) {
        return v <= 0 ? 0 : 1;
      }
      // x(s) rises from 0 to 1, so halving finds s to the last bit, the same on every machine.
      double low = 0;
      double high = 1;
      while (true) {
        double s = (low + high) / 2;
        if (s <= low || s >= high) {
          return bezier(y1, y2, s);
        }
        if (bezier(x1, x2, s) < v) {
          low = s;
        } else {
          high = s;
        }
      }
    }

    private static double bezier(double first, double second, double s) {
      double rest = 1 - s;
      return 3 * rest * rest * s * first + 3 * rest * s * s * second + s * s * s;
    }

    @Override
    public String text() {
      return "cubic-bezier("
          + Checks.exact(x1)
          + ", "
          + Checks.exact(y1)
          + ", "
          + Checks.exact(x2)
          + ", "
          + Checks.exact(y2)
          + ")";
    }
  }

  /** What {@link #parse} accepts, for messages. */
  String ALLOWED =
      "must be linear, hold, smooth or cubic-bezier(x1, y1, x2, y2), with x1 and x2 from 0 to 1 and"
          + " y1 and y2 from -10 to 10";

  /** How project files write it. */
  FormType<Easing> TYPE =
      new FormType<>(
          "easing",
          ALLOWED,
          BezierText.SCHEMA,
          List.of("linear", "hold", "smooth", "cubic-bezier(0.25, 0.1, 0.25, 1)"),
          400,
          Easing::parse,
          Easing::text);

  /** Reads the words of a project file; empty if they are no easing. */
  static Optional<Easing> parse(String text) {
    return switch (text) {
      case "linear" -> Optional.of(LINEAR);
      case "hold" -> Optional.of(new Hold());
      case "smooth" -> Optional.of(new Smooth());
      default -> BezierText.parse(text);
    };
  }

  /** The written form of a cubic Bézier. */
  final class BezierText {
    private static final String NUMBER =
        "\\s*([+-]?(?:\\d{1,20}(?:\\.\\d{0,400})?|\\.\\d{1,400}))\\s*";
    private static final Pattern FORM =
        Pattern.compile(
            "cubic-bezier\\(" + NUMBER + "," + NUMBER + "," + NUMBER + "," + NUMBER + "\\)");

    // For the schema: the same, with the range of each number told by its digits.
    private static final String X =
        "\\s*(\\+?(0{0,19}1(\\.0{0,400})?|0{1,20}(\\.[0-9]{0,400})?|\\.[0-9]{1,400})"
            + "|-(0{1,20}(\\.0{0,400})?|\\.0{1,400}))\\s*";
    private static final String Y =
        "\\s*[+-]?(0{0,18}10(\\.0{0,400})?|0{0,19}[0-9](\\.[0-9]{0,400})?|\\.[0-9]{1,400})\\s*";
    private static final String SCHEMA =
        "^(linear|hold|smooth|cubic-bezier\\(" + String.join(",", X, Y, X, Y) + "\\))$";

    private BezierText() {}

    private static Optional<Easing> parse(String text) {
      Matcher m = FORM.matcher(text);
      if (!m.matches()) {
        return Optional.empty();
      }
      double[] p = new double[4];
      for (int i = 0; i < p.length; i++) {
        // Adding 0 makes a written -0 the 0 that it is.
        p[i] = Double.parseDouble(m.group(i + 1)) + 0.0;
      }
      boolean valid = p[0] >= 0 && p[0] <= 1 && p[2] >= 0 && p[2] <= 1;
      valid &= Math.abs(p[1]) <= 10 && Math.abs(p[3]) <= 10;
      return valid ? Optional.of(new CubicBezier(p[0], p[1], p[2], p[3])) : Optional.empty();
    }
  }
}
