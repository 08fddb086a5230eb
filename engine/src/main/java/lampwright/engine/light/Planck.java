package lampwright.engine.light;

import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;

/** The chromaticity of a black body: Planck's law summed over the observer table at 5 nm. */
public final class Planck {
  /** In m K. */
  private static final double C2 = TradeNumbers.number("black body", "second radiation constant");

  // c2 over the wavelength, in kelvin, and the observer times wavelength^-5, row by row. The first
  // radiation constant and the unit of length cancel in a chromaticity.
  private static final double[] EXPONENT = new double[Observer.ROWS];
  private static final double[][] WEIGHT = new double[Observer.ROWS][3];

  static {
    for (int row = 0; row < Observer.ROWS; row++) {
      double nm = Observer.FIRST_NM + row * Observer.STEP_NM;
      EXPONENT[row] = C2 * 1e9 / nm;
      double micron = nm / 1000;
      double square = micron * micron;
      double fifth = square * square * micron;
      for (int i = 0; i < 3; i++) {
        WEIGHT[row][i] = Observer.at(row, i) / fifth;
      }
    }
  }

  private Planck() {}

  /**
   * The chromaticity of a black body.
   *
   * @param kelvin 1,667 to 25,000 K
   */
  public static Chromaticity chromaticity(double kelvin) {
    double[] xy = new double[2];
    chromaticity(kelvin, xy, 0);
    return new Chromaticity(xy[0], xy[1]);
  }

  /**
   * Writes x and y of {@link #chromaticity(double)} to {@code into[at]} and {@code into[at + 1]}.
   */
  static void chromaticity(double kelvin, double[] into, int at) {
    Checks.require("kelvin", kelvin, Colour.Kelvin.MIN, Colour.Kelvin.MAX);
    double x = 0;
    double y = 0;
    double z = 0;
    for (int row = 0; row < Observer.ROWS; row++) {
      // At 1,667 K and 380 nm the exponent is 23, so that nothing here overflows or vanishes.
      double power = 1 / (StrictMath.exp(EXPONENT[row] / kelvin) - 1);
      double[] weight = WEIGHT[row];
      x += weight[0] * power;
      y += weight[1] * power;
      z += weight[2] * power;
    }
    double sum = x + y + z;
    into[at] = x / sum;
    into[at + 1] = y / sum;
  }
}
