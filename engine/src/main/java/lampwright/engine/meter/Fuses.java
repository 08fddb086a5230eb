package lampwright.engine.meter;

import java.util.OptionalDouble;
import lampwright.engine.light.Checks;

/** The ratings of fuses that shops keep, and which of them fits a wire. */
public final class Fuses {
  /** A fuse is to be rated for at least so much of the greatest current (practice). */
  public static final double MARGIN = 1.25;

  /**
   * Ratings in A: below 1 A those of small glass fuses, which follow the R10 series (IEC 60127-2,
   * from memory), from 1 A those of blade fuses for vehicles (ISO 8820-3, from memory).
   */
  private static final double[] RATINGS = {
    0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30
  };

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
