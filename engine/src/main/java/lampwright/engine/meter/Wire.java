package lampwright.engine.meter;

import java.util.OptionalInt;
import lampwright.engine.light.Checks;

/**
 * One conductor of copper.
 *
 * @param squareMillimetres its cross-section, 0.001 to 120 mm2
 */
public record Wire(double squareMillimetres) {
  /** The thinnest American wire gauge that is offered, 0.0050 mm2. */
  public static final int THINNEST_GAUGE = 40;

  /** The thickest American wire gauge that is offered, 53.5 mm2. */
  public static final int THICKEST_GAUGE = 0;

  /** Copper of 100 % IACS at 20 degrees C, in ohm mm2/m (IEC 60028). */
  private static final double RESISTIVITY = 0.017241;

  /**
   * Practice, without a source: a thin wire shut up in a model stays cool up to about 5 A a mm2.
   * Many tables for single wires in free air allow far more.
   */
  private static final double CAUTION_AMPS_PER_SQUARE_MILLIMETRE = 5;

  private static final double ROUNDING = 1e-9;

  public Wire {
    Checks.require("wire cross-section in mm2", squareMillimetres, 0.001, 120);
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
    return 0.127 * StrictMath.pow(92, (36.0 - gauge) / 39);
  }

  /**
   * The thinnest gauge that is at least so thick. Even gauges alone, as they are what shops keep
   * (practice).
   *
   * @return none if not even AWG 0 is so thick
   */
  public static OptionalInt gaugeAtLeast(double squareMillimetres) {
    for (int gauge = THINNEST_GAUGE; gauge >= THICKEST_GAUGE; gauge -= 2) {
      if (ofGauge(gauge).squareMillimetres >= squareMillimetres * (1 - ROUNDING)) {
        return OptionalInt.of(gauge);
      }
    }
    return OptionalInt.empty();
  }

  /** Resistance of one conductor at 20 degrees C, in ohm/m. */
  public double ohmsPerMetre() {
    return RESISTIVITY / squareMillimetres;
  }

  /** The current in A above which this wire deserves a caution for its heat (practice). */
  public double cautionAmps() {
    return CAUTION_AMPS_PER_SQUARE_MILLIMETRE * squareMillimetres;
  }
}
