package lampwright.engine.rig;

import java.util.Optional;
import lampwright.engine.light.Checks;
import lampwright.engine.light.Colour;

/**
 * One constant-current or PWM output that drives plain LEDs in series.
 *
 * @param id unique among the outputs
 * @param colour the colour of its LEDs, for the screen
 * @param milliamps current at full duty, 0 to 10,000 mA
 * @param ledsInSeries 1 to 100
 * @param forwardVolts forward voltage of one LED, 0.5 to 10 V
 * @param supply whether it gives a current or a voltage
 * @param pin the controller's pin that drives it, if stated
 */
public record DriverOutput(
    String id,
    Colour.Srgb colour,
    double milliamps,
    int ledsInSeries,
    double forwardVolts,
    OutputSupply supply,
    Optional<Pin> pin) {
  public static final Colour.Srgb DEFAULT_COLOUR = new Colour.Srgb(255, 255, 255);
  public static final double DEFAULT_MILLIAMPS = 20;
  public static final int DEFAULT_LEDS_IN_SERIES = 1;

  /** Of a red or amber LED; blue and white ones have 2.8 to 3.4 V (common practice). */
  public static final double DEFAULT_FORWARD_VOLTS = 2.1;

  public static final OutputSupply DEFAULT_SUPPLY = OutputSupply.CURRENT;

  public DriverOutput {
    Checks.of("output")
        .id("id", id)
        .range("milliamps", milliamps, 0, 10_000)
        .range("ledsInSeries", ledsInSeries, 1, 100)
        .range("forwardVolts", forwardVolts, 0.5, 10)
        .done();
  }

  /** An output of which no pin is stated. */
  public DriverOutput(
      String id,
      Colour.Srgb colour,
      double milliamps,
      int ledsInSeries,
      double forwardVolts,
      OutputSupply supply) {
    this(id, colour, milliamps, ledsInSeries, forwardVolts, supply, Optional.empty());
  }

  /** An output that gives a current. */
  public DriverOutput(
      String id, Colour.Srgb colour, double milliamps, int ledsInSeries, double forwardVolts) {
    this(id, colour, milliamps, ledsInSeries, forwardVolts, DEFAULT_SUPPLY);
  }

  /** An output with defaults for all but its id. */
  public static DriverOutput of(String id) {
    return new DriverOutput(
        id, DEFAULT_COLOUR, DEFAULT_MILLIAMPS, DEFAULT_LEDS_IN_SERIES, DEFAULT_FORWARD_VOLTS);
  }
}
