package lampwright.engine.rig;

import java.util.OptionalDouble;
import lampwright.engine.light.Checks;

/**
 * A battery pack by its label.
 *
 * @param milliampHours 1 to 1,000,000
 * @param usableShare how much of that may be drawn, above 0 to 1; a pack drawn flat ages, and
 *     lithium cells must not be, so that 0.8 is common (practice)
 */
public record Battery(double milliampHours, double usableShare) {
  public static final double DEFAULT_USABLE_SHARE = 0.8;

  public Battery {
    Checks.of("battery")
        .range("milliampHours", milliampHours, 1, 1_000_000)
        .range("usableShare", usableShare, 0.01, 1)
        .done();
  }

  /**
   * How long the pack lasts.
   *
   * @param meanMilliamps at least 0
   * @return hours; none if no current flows
   */
  public OptionalDouble hours(double meanMilliamps) {
    Checks.require("mean milliamps", meanMilliamps, 0, 10_000_000);
    return meanMilliamps == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(milliampHours * usableShare / meanMilliamps);
  }
}
