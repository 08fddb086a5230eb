package lampwright.engine.meter;

import java.util.List;
import java.util.stream.IntStream;
import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.rig.Conductor;

/**
 * One conductor of copper.
 *
 * @param squareMillimetres its cross-section, 0.001 to 120 mm2
 */
public record Wire(double squareMillimetres) {
  private static final int THINNEST_GAUGE = Conductor.Gauge.THINNEST;
  private static final int THICKEST_GAUGE = Conductor.Gauge.THICKEST;

  /** Copper at 20 degrees C, in ohm mm2/m. */
  private static final double RESISTIVITY = TradeNumbers.number("copper", "resistivity");

  /** Many tables for single wires in free air allow far more than this practice. */
  private static final double WIRE_AMPS_PER_SQUARE_MILLIMETRE =
      TradeNumbers.number("wire in a model", "greatest current");

  /**
   * IPC-2221: I = k dT^0.44 A^0.725 with A in square mils, of a conductor inside a board. The
   * copper of a strip is as flat, and lies under its coating.
   */
  private static final double STRIP_AMPS_PER_POWER_OF_SQUARE_MIL =
      TradeNumbers.number("strip copper", "k")
          * StrictMath.pow(
              TradeNumbers.number("strip copper", "rise"),
              TradeNumbers.number("strip copper", "power of the rise"));

  private static final double STRIP_POWER =
      TradeNumbers.number("strip copper", "power of the cross-section");

  private static final double SQUARE_MILS_PER_SQUARE_MILLIMETRE = 1 / (0.0254 * 0.0254);

  private static final double GAUGE_36_MILLIMETRES =
      TradeNumbers.number("American wire gauge", "diameter of gauge 36");
  private static final double RATIO_OF_39_GAUGES =
      TradeNumbers.number("American wire gauge", "ratio over 39 gauges");

  private static final double ROUNDING = 1e-9;

  public Wire {
    Checks.require("wire cross-section in mm2", squareMillimetres, 0.001, 120);
  }

  /** A conductor as stated. */
  public static Wire of(Conductor conductor) {
    return conductor.gauge().isPresent()
        ? ofGauge(conductor.gauge().getAsInt())
        : new Wire(conductor.area().orElseThrow());
  }

  /**
   * The wire of an American wire gauge, as if it were solid.
   *
   * @param gauge 0 to 40
   */
  public static Wire ofGauge(int gauge) {
    double diameter = gaugeDiameterMillimetres(gauge);
    return new Wire(Math.PI / 4 * diameter * diameter);
  }

  /**
   * The diameter of an American wire gauge in mm, 0.127 x 92^((36 - gauge)/39) (ASTM B258).
   *
   * @param gauge 0 to 40
   */
  public static double gaugeDiameterMillimetres(int gauge) {
    Checks.require("wire gauge AWG", gauge, THICKEST_GAUGE, THINNEST_GAUGE);
    return GAUGE_36_MILLIMETRES * StrictMath.pow(RATIO_OF_39_GAUGES, (36.0 - gauge) / 39);
  }

  /**
   * The gauges that are at least so thick, the thinnest first. Even gauges alone, as they are what
   * shops keep (practice).
   */
  static List<Integer> gaugesFrom(double squareMillimetres) {
    return IntStream.rangeClosed(0, (THINNEST_GAUGE - THICKEST_GAUGE) / 2)
        .mapToObj(i -> THINNEST_GAUGE - 2 * i)
        .filter(awg -> ofGauge(awg).squareMillimetres >= squareMillimetres * (1 - ROUNDING))
        .toList();
  }

  /** Resistance of one conductor at 20 degrees C, in ohm/m. */
  public double ohmsPerMetre() {
    return RESISTIVITY / squareMillimetres;
  }

  /** The current in A above which it deserves a caution for its heat as a round wire (practice). */
  public double wireLimitAmps() {
    return WIRE_AMPS_PER_SQUARE_MILLIMETRE * squareMillimetres;
  }

  /** The same as the flat copper of a strip (IPC-2221, 10 K). */
  public double stripLimitAmps() {
    return STRIP_AMPS_PER_POWER_OF_SQUARE_MIL
        * StrictMath.pow(SQUARE_MILS_PER_SQUARE_MILLIMETRE * squareMillimetres, STRIP_POWER);
  }
}
