package lampwright.engine.second;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.fraction.BigFraction;
import tools.jackson.databind.JsonNode;

/** Patterns that go from one colour to another. */
final class Changes {
  private Changes() {}

  static Playing colourCycle(Row row) {
    BigFraction period = row.exact("periodMs", "4000");
    double spread = Fields.number(row.pattern(), "spread", 0);
    double saturation = Fields.number(row.pattern(), "saturation", 1);
    boolean backwards = Fields.flag(row.pattern(), "backwards", false);
    return t -> {
      double share = row.share(t, period);
      double[][] drives = row.dark();
      for (int k = 0; k < row.n(); k++) {
        double turns = (backwards ? -share : share) + spread * k / row.n();
        turns = turns - Math.floor(turns);
        Mix mix = row.colours().hue(turns * 6, saturation, row.packages().get(k));
        drives[k] = mix.at(row.light());
      }
      return drives;
    };
  }

  static Playing tint(Row row) {
    double kelvin = Fields.number(row.pattern(), "kelvin", 4000);
    double toKelvin = Fields.number(row.pattern(), "toKelvin", kelvin);
    if (kelvin == toKelvin) {
      double[][] steady = Patterns.steady(tinted(row, kelvin, kelvin, kelvin), row.light());
      return t -> steady;
    }
    double a = 1e6 / kelvin;
    double b = 1e6 / toKelvin;
    return t -> {
      double u = Exact.near(t.divide(row.cueMs()));
      double now = Math.min(25_000, Math.max(1_667, 1e6 / (a + (b - a) * u)));
      return Patterns.steady(tinted(row, kelvin, toKelvin, now), row.light());
    };
  }

  private static List<Mix> tinted(Row row, double kelvin, double toKelvin, double now) {
    return row.packages().stream().map(on -> Colours.tint(kelvin, toKelvin, now, on)).toList();
  }

  static Playing fade(Row row) {
    JsonNode pattern = row.pattern();
    Keyframe from =
        new Keyframe(
            BigFraction.ZERO,
            row.mixes(Fields.child(pattern, "from").orElse(row.colour())),
            Fields.number(pattern, "fromLevel", 0),
            Easing.of(Fields.text(pattern, "easing", "linear")));
    Keyframe to =
        new Keyframe(
            row.cueMs(),
            row.mixes(Fields.child(pattern, "to").orElse(row.colour())),
            Fields.number(pattern, "toLevel", 1),
            from.easing);
    return t -> between(row, from, to, t);
  }

  static Playing keyframes(Row row) {
    List<Keyframe> frames = new ArrayList<>();
    for (JsonNode frame : row.pattern().get("frames")) {
      frames.add(
          new Keyframe(
              Exact.field(frame, "atMs", "0"),
              row.mixes(Fields.child(frame, "colour").orElse(row.colour())),
              Fields.number(frame, "level", row.level()),
              Easing.of(Fields.text(frame, "easing", "linear"))));
    }
    BigFraction last = frames.get(frames.size() - 1).at;
    boolean repeats =
        Fields.flag(row.pattern(), "repeat", true) && Exact.less(BigFraction.ZERO, last);
    return t -> {
      BigFraction place = repeats ? row.place(t, last) : t;
      int r = 0;
      while (r < frames.size() && frames.get(r).at.compareTo(place) <= 0) {
        r++;
      }
      if (r == 0 || r == frames.size()) {
        Keyframe only = frames.get(r == 0 ? 0 : r - 1);
        return Patterns.steady(only.mixes, row.colours().curve(only.level));
      }
      return between(row, frames.get(r - 1), frames.get(r), place);
    };
  }

  private static double[][] between(Row row, Keyframe left, Keyframe right, BigFraction place) {
    BigFraction gone = place.subtract(left.at).divide(right.at.subtract(left.at));
    double u = left.easing.applyAsDouble(Exact.near(gone));
    double light = row.colours().curve(between(left.level, right.level, u));
    double[][] drives = row.dark();
    for (int k = 0; k < row.n(); k++) {
      Mix p = left.mixes.get(k);
      Mix q = right.mixes.get(k);
      boolean proportional = p.isProportional() && q.isProportional();
      double[] from = p.at(proportional ? 1 : light);
      double[] to = q.at(proportional ? 1 : light);
      for (int i = 0; i < 4; i++) {
        double drive = between(from[i], to[i], u);
        drives[k][i] = proportional ? drive * light : drive;
      }
    }
    return drives;
  }

  private static double between(double p, double q, double u) {
    return p == q ? p : Math.min(1, Math.max(0, p * (1 - u) + q * u));
  }

  private static final class Keyframe {
    private final BigFraction at;
    private final List<Mix> mixes;
    private final double level;
    private final DoubleUnaryOperator easing;

    Keyframe(BigFraction at, List<Mix> mixes, double level, DoubleUnaryOperator easing) {
      this.at = at;
      this.mixes = mixes;
      this.level = level;
      this.easing = easing;
    }
  }
}
