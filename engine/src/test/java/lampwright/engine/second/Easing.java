package lampwright.engine.second;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;

/** How a value changes over time. */
final class Easing {
  private Easing() {}

  static DoubleUnaryOperator of(String text) {
    return switch (text) {
      case "linear" -> v -> v;
      case "hold" -> v -> 0;
      case "smooth" -> v -> v * v * (3 - 2 * v);
      default -> bezier(text);
    };
  }

  private static DoubleUnaryOperator bezier(String text) {
    String inner = text.substring(text.indexOf('(') + 1, text.indexOf(')'));
    double[] p =
        Stream.of(inner.split(",", -1))
            .map(String::strip)
            .mapToDouble(Double::parseDouble)
            .toArray();
    return v -> {
      if (v <= 0) {
        return 0;
      }
      return v >= 1 ? 1 : z(p[1], p[3], parameter(p[0], p[2], v));
    };
  }

  private static double parameter(double x1, double x2, double v) {
    double low = 0;
    double high = 1;
    while (true) {
      double s = (low + high) / 2;
      if (s <= low || s >= high) {
        return s;
      }
      if (z(x1, x2, s) < v) {
        low = s;
      } else {
        high = s;
      }
    }
  }

  private static double z(double p, double q, double s) {
    double r = 1 - s;
    return 3 * r * r * s * p + 3 * r * s * s * q + s * s * s;
  }
}
