package lampwright.engine.meter;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;

/** The ratings of fuses that shops keep, and which of them fits a wire. */
public final class Fuses {
  /** A fuse is to be rated for at least so much of the greatest current. */
  public static final double MARGIN = TradeNumbers.number("fuse", "rating over current");

  /** In A: below 1 A small glass fuses, from 1 A blade fuses for vehicles. */
  private static final List<Double> RATINGS =
      Stream.of("ratings below 1 A", "ratings from 1 A")
          .flatMap(item -> TradeNumbers.get("fuse", item).numbers().stream())
          .toList();

  private static final double ROUNDING = 1e-9;

  private Fuses() {}

  /**
   * The least usual rating that carries a current for good.
   *
   * @param peakAmps the greatest current, at least 0
   * @return none if it is more than the largest fuse carries
   */
  public static OptionalDouble atLeast(double peakAmps) {
    Checks.require("peak amps", peakAmps, 0, 1e9);
    for (double rating : RATINGS) {
      if (carries(rating, peakAmps)) {
        return OptionalDouble.of(rating);
      }
    }
    return OptionalDouble.empty();
  }

  /**
   * The least usual rating that carries a current for good and protects a wire.
   *
   * @param peakAmps the greatest current, at least 0
   * @param limitAmps what the wire carries at most
   * @return none if no fuse does both
   */
  public static OptionalDouble fitting(double peakAmps, double limitAmps) {
    OptionalDouble least = atLeast(peakAmps);
    return least.isPresent() && protects(least.getAsDouble(), limitAmps)
        ? least
        : OptionalDouble.empty();
  }

  /** Whether a fuse carries a current for good. */
  public static boolean carries(double rating, double peakAmps) {
    return rating >= MARGIN * peakAmps * (1 - ROUNDING);
  }

  /** Whether a fuse blows before a wire carries more than it may. */
  public static boolean protects(double rating, double limitAmps) {
    return rating <= limitAmps * (1 + ROUNDING);
  }
}
