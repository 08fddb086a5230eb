package lampwright.engine.rig;

import lampwright.engine.light.Checks;

/**
 * What a pixel needs to work.
 *
 * @param minVolts least supply, 0.5 to 60 V
 * @param maxVolts greatest supply, at least the least, to 60 V
 * @param highShare the least high level of its data input as a share of its supply, 0 to 1
 * @param highVolts the same in volts, 0 to 60 V; the input needs the greater of the two
 */
public record SupplyNeeds(double minVolts, double maxVolts, double highShare, double highVolts) {
  /** How far a supply may be off its nominal voltage where a type says no more (practice). */
  private static final double USUAL_TOLERANCE = 0.1;

  /** The threshold of CMOS inputs such as the WS2812B's (its datasheet: 0.7 VDD). */
  private static final double CMOS_HIGH_SHARE = 0.7;

  public SupplyNeeds {
    Checks.of("supply needs")
        .range("minVolts", minVolts, 0.5, 60)
        .range("maxVolts", maxVolts, minVolts, 66)
        .range("highShare", highShare, 0, 1)
        .range("highVolts", highVolts, 0, 60)
        .done();
  }

  /** The needs of a type of which only the nominal supply is known. */
  static SupplyNeeds around(double volts) {
    return new SupplyNeeds(
        volts * (1 - USUAL_TOLERANCE), volts * (1 + USUAL_TOLERANCE), CMOS_HIGH_SHARE, 0);
  }

  /** The least high level of the data line at a supply voltage, V. */
  public double inputHighVolts(double supplyVolts) {
    return Math.max(highShare * supplyVolts, highVolts);
  }

  /** TEMPORARY until the data say it. */
  public double failVolts() {
    return 3.5 / 4.5 * minVolts;
  }

  /** TEMPORARY until the data say it. */
  public double inputMaxVolts(double supplyVolts) {
    return supplyVolts + 0.5;
  }
}
