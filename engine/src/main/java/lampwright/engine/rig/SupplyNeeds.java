package lampwright.engine.rig;

import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;

/**
 * What a pixel needs to work.
 *
 * @param failVolts supply below which it fails, 0.5 V to {@code minVolts}
 * @param minVolts least supply at which it works as stated, 0.5 to 60 V; between the two it lights,
 *     but dims, and its white changes colour
 * @param maxVolts greatest supply that it survives, from {@code minVolts} to 66 V
 * @param inputHigh least level of its data input that counts as high
 * @param inputMax greatest level that its data input survives
 */
public record SupplyNeeds(
    double failVolts, double minVolts, double maxVolts, InputLevel inputHigh, InputLevel inputMax) {
  private static final double MIN_VOLTS = 0.5;

  /** How far a supply may be off its nominal voltage where a type says no more. */
  private static final double USUAL_TOLERANCE =
      TradeNumbers.number("pixel type", "supply off its nominal voltage");

  private static final InputLevel USUAL_HIGH =
      new InputLevel(TradeNumbers.number("pixel type", "input high level"), 0);
  private static final InputLevel USUAL_MAX =
      new InputLevel(1, TradeNumbers.number("pixel type", "input above supply"));

  public SupplyNeeds {
    Checks checks =
        Checks.of("supply needs")
            .range("minVolts", minVolts, MIN_VOLTS, 60)
            .range("maxVolts", maxVolts, MIN_VOLTS, 66)
            .range("inputHighShare", inputHigh.supplyShare(), 0, 1)
            .range("inputHighVolts", inputHigh.volts(), 0, 60)
            .range("inputMaxShare", inputMax.supplyShare(), 0, 1)
            .range("inputMaxVolts", inputMax.volts(), 0, 60);
    // Often the same number, and then one fault.
    if (failVolts != minVolts) {
      checks.range("failVolts", failVolts, MIN_VOLTS, 60);
    }
    if (checks.faults().isEmpty()) {
      String least = Checks.plain(minVolts);
      checks
          .that(
              failVolts <= minVolts,
              "failVolts",
              Checks.plain(failVolts),
              "needs at most minVolts, which is " + least)
          .that(
              maxVolts >= minVolts,
              "maxVolts",
              Checks.plain(maxVolts),
              "needs at least minVolts, which is " + least);
    }
    checks.done();
  }

  /** The needs of a type of which only the nominal supply is known. */
  public static SupplyNeeds around(double volts) {
    double least = volts * (1 - USUAL_TOLERANCE);
    return new SupplyNeeds(least, least, volts * (1 + USUAL_TOLERANCE), USUAL_HIGH, USUAL_MAX);
  }

  /** The least high level of the data line at a supply voltage, V. */
  public double inputHighVolts(double supplyVolts) {
    return inputHigh.at(supplyVolts);
  }

  /** The greatest level that the data line may have at a supply voltage, V. */
  public double inputMaxVolts(double supplyVolts) {
    return inputMax.at(supplyVolts);
  }
}
