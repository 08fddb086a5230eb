package lampwright.engine.second;

import java.util.List;
import java.util.function.Predicate;
import org.apache.commons.math3.fraction.BigFraction;

/** The patterns by kind, and those that are as steady or dark. */
final class Patterns {
  private Patterns() {}

  static Playing of(Row row) {
    String kind = row.pattern().get("kind").stringValue();
    return switch (kind) {
      case "steady" -> whileLit(row, t -> true);
      case "flash" -> flash(row);
      case "indicator" -> indicator(row);
      case "light-character" -> lightCharacter(row);
      case "fill" -> fill(row);
      case "rotating-beacon" -> Motion.beacon(row);
      case "chase" -> Motion.chase(row);
      case "breathe" -> Motion.breathe(row);
      case "flicker" -> Noise.flicker(row);
      case "test-walk" -> Motion.testWalk(row);
      case "colour-cycle" -> Changes.colourCycle(row);
      case "tint" -> Changes.tint(row);
      case "fade" -> Changes.fade(row);
      case "keyframes" -> Changes.keyframes(row);
      default -> throw new IllegalArgumentException(kind);
    };
  }

  /** As steady while the time of the cue is lit, else 0. */
  private static Playing whileLit(Row row, Predicate<BigFraction> lit) {
    double[][] steady = steady(row.mixes(), row.light());
    return t -> lit.test(t) ? steady : row.dark();
  }

  static double[][] steady(List<Mix> mixes, double light) {
    return mixes.stream().map(mix -> mix.at(light)).toArray(double[][]::new);
  }

  private static Playing flash(Row row) {
    BigFraction on = row.exact("onMs", "100");
    BigFraction one = on.add(row.exact("offMs", "100"));
    BigFraction group = one.multiply(Fields.whole(row.pattern(), "flashes", 1));
    BigFraction period = group.add(row.exact("gapMs", "0"));
    return whileLit(
        row,
        t -> {
          BigFraction place = row.place(t, period);
          return Exact.less(place, group) && Exact.less(Exact.mod(place, one), on);
        });
  }

  private static Playing indicator(Row row) {
    BigFraction period = new BigFraction(60000).divide(row.exact("perMinute", "90"));
    BigFraction on = period.multiply(row.exact("onShare", "0.5"));
    return whileLit(row, t -> Exact.less(row.place(t, period), on));
  }

  private static Playing lightCharacter(Row row) {
    LightCharacter character =
        LightCharacter.of(
            Fields.text(row.pattern(), "character", "Fl(2) 10s"), row.exact("unitMs", "500"));
    return whileLit(row, t -> character.isLit(row.place(t, character.period())));
  }

  private static Playing fill(Row row) {
    BigFraction over = row.exact("overMs", "200");
    BigFraction lit = over.add(row.exact("holdMs", "200"));
    BigFraction period = lit.add(row.exact("offMs", "400"));
    double[][] steady = steady(row.mixes(), row.light());
    return t -> {
      BigFraction place = row.place(t, period);
      double[][] drives = row.dark();
      for (int k = 0; k < row.n(); k++) {
        BigFraction from = over.multiply(k).divide(row.n());
        if (from.compareTo(place) <= 0 && Exact.less(place, lit)) {
          drives[k] = steady[k];
        }
      }
      return drives;
    };
  }
}
