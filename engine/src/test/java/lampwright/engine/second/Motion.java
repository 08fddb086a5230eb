package lampwright.engine.second;

import java.util.List;
import java.util.stream.StreamSupport;
import org.apache.commons.math3.fraction.BigFraction;
import tools.jackson.databind.JsonNode;

/** Patterns that move or swell. */
final class Motion {
  private Motion() {}

  static Playing beacon(Row row) {
    BigFraction period = new BigFraction(60000).divide(row.exact("perMinute", "120"));
    double half = Fields.number(row.pattern(), "beamDegrees", 120) / 2;
    boolean clockwise = Fields.flag(row.pattern(), "clockwise", true);
    double[] angles = angles(row);
    List<Mix> mixes = row.mixes().stream().map(mix -> mix.dimmed(row.light())).toList();
    return t -> {
      double share = row.share(t, period);
      double beam = clockwise ? 360 * share : 360 * -share;
      double[][] drives = row.dark();
      for (int k = 0; k < row.n(); k++) {
        double d = apart(angles[k], beam);
        drives[k] = mixes.get(k).at(d < half ? (1 + cosine(180 * d / half)) / 2 : 0);
      }
      return drives;
    };
  }

  private static double[] angles(Row row) {
    JsonNode given = row.pattern().path("angles");
    double[] list =
        StreamSupport.stream(given.spliterator(), false)
            .mapToDouble(JsonNode::doubleValue)
            .toArray();
    double[] angles = new double[row.n()];
    for (int k = 0; k < row.n(); k++) {
      angles[k] = list.length > 0 ? list[k % list.length] : 360.0 * k / row.n();
    }
    return angles;
  }

  private static double apart(double a, double b) {
    double d = Math.abs(a - b);
    if (d >= 360) {
      d = d % 360;
    }
    return d > 180 ? 360 - d : d;
  }

  private static double cosine(double degrees) {
    if (degrees > 90) {
      return -cosine(180 - degrees);
    }
    if (degrees == 90) {
      return 0;
    }
    return degrees == 60 ? 0.5 : StrictMath.cos(degrees * 0.017453292519943295);
  }

  static Playing breathe(Row row) {
    BigFraction period = row.exact("periodMs", "4000");
    double low = Fields.number(row.pattern(), "lowLevel", 0);
    List<Mix> mixes = row.mixes();
    return t -> {
      double risen = (1 - cosine(apart(360 * row.share(t, period), 0))) / 2;
      return Patterns.steady(mixes, row.colours().curve(low + (row.level() - low) * risen));
    };
  }

  static Playing chase(Row row) {
    int n = row.n();
    BigFraction step = row.exact("stepMs", "80");
    int width = Fields.whole(row.pattern(), "width", 1);
    int tail = Fields.whole(row.pattern(), "tail", 0);
    boolean bounce = Fields.flag(row.pattern(), "bounce", false);
    BigFraction period = step.multiply(bounce ? Math.max(1, 2 * n - 2) : n);
    int seen = Math.min(width + tail, n);
    List<Mix> mixes = row.mixes();
    return t -> {
      int s = Exact.floor(row.place(t, period).divide(step)).intValueExact();
      double[][] drives = row.dark();
      for (int k = 0; k < n; k++) {
        int behind = s < n ? s - k : k - (2 * n - 2 - s);
        int b = bounce ? behind : Math.floorMod(behind, n);
        if (b >= 0 && b < seen) {
          int j = b - width + 1;
          double level = j <= 0 ? row.level() : row.level() * (tail + 1 - j) / (tail + 1);
          drives[k] = mixes.get(k).at(row.colours().curve(level));
        }
      }
      return drives;
    };
  }

  static Playing testWalk(Row row) {
    BigFraction step = row.exact("stepMs", "500");
    int emitters = row.packages().stream().mapToInt(LightPackage::emitters).sum();
    BigFraction period = step.multiply(emitters);
    return t -> {
      int number = Exact.floor(row.place(t, period).divide(step)).intValueExact();
      double[][] drives = row.dark();
      for (int k = 0; k < row.n() && number >= 0; k++) {
        int here = row.packages().get(k).emitters();
        if (number < here) {
          drives[k][number] = row.light();
        }
        number -= here;
      }
      return drives;
    };
  }
}
