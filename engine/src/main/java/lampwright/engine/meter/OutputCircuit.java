package lampwright.engine.meter;

import java.util.Optional;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.OutputDrive;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.Rig;

/**
 * The string of LEDs on a driver output.
 *
 * @param output the output's id
 * @param supply what the output gives
 * @param volts across string and resistor or driver: the rig's supply, or the level of the
 *     controller's pin that drives the string, V
 * @param stringVolts sum of the LEDs' forward voltages, V
 * @param resistor of an output that gives a voltage; none if the string can't light or is given no
 *     current to speak of
 */
public record OutputCircuit(
    String output,
    OutputSupply supply,
    double volts,
    double stringVolts,
    Optional<SeriesResistor> resistor) {
  /** What a constant-current driver needs above its LEDs at the least, V (assumed). */
  public static final double LEAST_HEADROOM_VOLTS =
      TradeNumbers.number("constant-current driver", "least headroom");

  /** What any usual constant-current driver has enough of, V (assumed). */
  public static final double SURE_HEADROOM_VOLTS =
      TradeNumbers.number("constant-current driver", "sure headroom");

  // 5 V on two LEDs of 2.5 V must not light by a rounding.
  private static final double ROUNDING = 1e-9;

  /** The string of an output. */
  public static OutputCircuit of(Rig rig, DriverOutput output) {
    double volts =
        output.drive().filter(OutputDrive.PIN::equals).isPresent()
            ? rig.pinVolts()
            : rig.supplyVolts();
    boolean resistor =
        output.supply() == OutputSupply.VOLTAGE
            && output.milliamps() >= SeriesResistor.LEAST_MILLIAMPS;
    return new OutputCircuit(
        output.id(),
        output.supply(),
        volts,
        output.stringVolts(),
        resistor
            ? SeriesResistor.of(
                volts, output.ledsInSeries(), output.forwardVolts(), output.milliamps())
            : Optional.empty());
  }

  /** What is left above the LEDs, V; below 0 where they need more than there is. */
  public double headroomVolts() {
    return volts - stringVolts;
  }

  /** Whether there is a voltage left to light the LEDs with. */
  public boolean lights() {
    return headroomVolts() > volts * ROUNDING;
  }

  /** Whether a usual driver may, or surely does, reach its current with what is left. */
  public boolean hasHeadroom(double neededVolts) {
    return headroomVolts() >= neededVolts - volts * ROUNDING;
  }
}
