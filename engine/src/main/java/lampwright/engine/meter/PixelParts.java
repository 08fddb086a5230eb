package lampwright.engine.meter;

import java.util.List;
import lampwright.engine.facts.TradeNumbers;

/** The parts that common practice puts between supply, controller and the first pixel. */
public final class PixelParts {
  /** The least capacitor where the supply connects to the pixels, uF. */
  public static final double CAPACITOR_MICROFARADS =
      TradeNumbers.number("electrolytic capacitor", "at the first pixel");

  /** The least and the greatest resistor in the data line, ohm. */
  public static final List<Double> DATA_OHMS =
      TradeNumbers.get("data line", "series resistor").numbers();

  private static final List<Double> RATINGS =
      TradeNumbers.get("electrolytic capacitor", "ratings").numbers();
  private static final double RATING_OVER_SUPPLY =
      TradeNumbers.number("electrolytic capacitor", "rating over supply");

  /** A rating that is exact but for the rounding of the product is enough. */
  private static final double ROUNDING = 1e-9;

  private PixelParts() {}

  /** The least usual rating of a capacitor that is far enough above a supply, V. */
  public static double capacitorVolts(double supplyVolts) {
    double least = RATING_OVER_SUPPLY * supplyVolts;
    return RATINGS.stream().filter(rating -> rating >= least - ROUNDING).findFirst().orElse(least);
  }
}
