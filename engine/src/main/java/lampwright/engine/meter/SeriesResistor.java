package lampwright.engine.meter;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;

/**
 * The resistor in series with a string of LEDs on a voltage.
 *
 * @param exactOhms what the current asked for needs
 * @param ohms the next value up of the E24 series
 * @param watts dissipation at the current asked for, which the E24 value keeps it below
 * @param ratingWatts the least usual rating of at least twice that; none if there is none to 5 W
 * @param milliamps the current that flows with the E24 value
 * @param dropVolts the voltage across it
 * @param dropShare that voltage as a share of the supply
 */
public record SeriesResistor(
    double exactOhms,
    double ohms,
    double watts,
    OptionalDouble ratingWatts,
    double milliamps,
    double dropVolts,
    double dropShare) {
  /**
   * The least share of the supply that is to drop over the resistor. A supply 5 % high then raises
   * the current by a quarter; with less it multiplies it.
   */
  public static final double LEAST_DROP_SHARE = TradeNumbers.number("resistor", "least drop");

  /** How far a supply may be above its nominal voltage. */
  public static final double SUPPLY_TOLERANCE = TradeNumbers.number("supply", "tolerance");

  /** E24 in tenths. */
  private static final int[] E24 =
      TradeNumbers.get("resistor", "E24").numbers().stream()
          .mapToInt(value -> (int) Math.round(10 * value))
          .toArray();

  /** Ratings in W. */
  private static final List<Double> RATINGS = TradeNumbers.get("resistor", "ratings").numbers();

  private static final double RATING_OVER_DISSIPATION =
      TradeNumbers.number("resistor", "rating over dissipation");

  /** The least current that a string is taken to be asked for. */
  static final double LEAST_MILLIAMPS = 0.01;

  private static final double ROUNDING = 1e-9;

  /**
   * Chooses the resistor of a string.
   *
   * @param supplyVolts 0.1 to 1,000
   * @param leds in series, 1 to 1,000
   * @param forwardVolts of each LED, 0.1 to 100
   * @param milliamps through the string, 0.01 to 100,000
   * @return none if the string can't light, as its LEDs need all of the supply or more
   */
  public static Optional<SeriesResistor> of(
      double supplyVolts, int leds, double forwardVolts, double milliamps) {
    Checks.require("supply volts", supplyVolts, 0.1, 1000);
    Checks.require("LEDs in series", leds, 1, 1000);
    Checks.require("forward volts", forwardVolts, 0.1, 100);
    Checks.require("milliamps", milliamps, LEAST_MILLIAMPS, 100_000);
    double left = supplyVolts - leds * forwardVolts;
    // 5 V on two LEDs of 2.5 V must not light by a rounding.
    if (left <= supplyVolts * ROUNDING) {
      return Optional.empty();
    }
    double amps = milliamps / 1000;
    double exact = left / amps;
    double ohms = e24AtLeast(exact);
    double watts = amps * amps * ohms;
    return Optional.of(
        new SeriesResistor(
            exact, ohms, watts, ratingOf(watts), 1000 * left / ohms, left, left / supplyVolts));
  }

  /** The current in mA that flows at a supply at the upper end of its tolerance. */
  public double milliampsAtHighSupply() {
    return milliamps * (1 + SUPPLY_TOLERANCE / dropShare);
  }

  /** Whether enough drops over it that the current stays near what is meant. */
  public boolean hasMargin() {
    return dropShare >= LEAST_DROP_SHARE * (1 - ROUNDING);
  }

  /** The least value of the E24 series that is at least so great. */
  static double e24AtLeast(double ohms) {
    double wanted = ohms * (1 - ROUNDING);
    // Powers of ten from 10^-8 up hold every resistance that the ranges above allow.
    for (int power = -8; ; power++) {
      for (int tenths : E24) {
        double value = power < 1 ? tenths / powerOfTen(1 - power) : tenths * powerOfTen(power - 1);
        if (value >= wanted) {
          return value;
        }
      }
    }
  }

  private static OptionalDouble ratingOf(double watts) {
    for (double rating : RATINGS) {
      if (rating >= RATING_OVER_DISSIPATION * watts * (1 - ROUNDING)) {
        return OptionalDouble.of(rating);
      }
    }
    return OptionalDouble.empty();
  }

  // Exact up to 10^22, which StrictMath.pow need not be.
  private static double powerOfTen(int power) {
    double value = 1;
    for (int i = 0; i < power; i++) {
      value *= 10;
    }
    return value;
  }
}
