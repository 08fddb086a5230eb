package lampwright.exporters.target;

import java.util.Optional;

/**
 * What the pins of a controller are rated for.
 *
 * @param pinMilliamps absolute maximum of one pin, mA
 * @param testMilliamps at which the datasheet states a pin's levels, mA; 0 if it states none
 * @param allMilliamps absolute maximum of all pins together, mA
 * @param source where these numbers come from
 */
public record PinCurrents(
    double pinMilliamps, double testMilliamps, double allMilliamps, String source) {
  /** Up to where a pin's level is stated; its absolute maximum where no level is. */
  public double usualMilliamps() {
    return testMilliamps > 0 ? testMilliamps : pinMilliamps;
  }

  static Optional<PinCurrents> of(TargetTable table) {
    return table
        .find("pinMilliamps")
        .map(
            pin ->
                new PinCurrents(
                    Double.parseDouble(pin.value()),
                    table.find("pinTestMilliamps").map(i -> Double.valueOf(i.value())).orElse(0.0),
                    table.number("allPinsMilliamps"),
                    pin.citation()));
  }
}
