package lampwright.engine.light;

import java.util.function.DoubleUnaryOperator;
import lampwright.engine.check.Checks;

/** Chromaticities of spectra, for emitters of which only wavelengths are known. */
public final class Spectrum {
  /** The equal-energy stimulus, from which the dominant wavelength of an LED is told (CIE 127). */
  public static final Chromaticity EQUAL_ENERGY = new Chromaticity(1.0 / 3, 1.0 / 3);

  private static final double FOUR_LN_2 = 4 * StrictMath.log(2);

  // Halving 100 nm so often leaves less than a double can tell.
  private static final int HALVINGS = 60;

  private Spectrum() {}

  /**
   * The chromaticity of a spectrum, summed every 1 nm from 380 to 780 nm.
   *
   * @param power relative power at a wavelength in nm; at least 0, and above 0 somewhere
   * @throws IllegalArgumentException if the spectrum is dark in the visible range
   */
  public static Chromaticity chromaticity(DoubleUnaryOperator power) {
    double[] bar = new double[3];
    double x = 0;
    double y = 0;
    double z = 0;
    for (int nm = Observer.FIRST_NM; nm <= Observer.LAST_NM; nm++) {
      Observer.at(nm, bar);
      double p = power.applyAsDouble(nm);
      x += bar[0] * p;
      y += bar[1] * p;
      z += bar[2] * p;
    }
    double sum = x + y + z;
    if (!(y > 0 && sum > 0 && sum < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "spectrum: must be finite, and greater than 0 somewhere from 380 to 780 nm");
    }
    return new Chromaticity(x / sum, y / sum);
  }

  /**
   * The chromaticity of an emitter with a Gaussian spectrum.
   *
   * @param peakNm wavelength of greatest power, 400 to 700 nm
   * @param fwhmNm full width at half of the greatest power, 5 to 100 nm
   */
  public static Chromaticity gaussian(double peakNm, double fwhmNm) {
    Checks.require("peak", peakNm, 400, 700);
    Checks.require("full width at half maximum", fwhmNm, 5, 100);
    return chromaticity(
        nm -> {
          double widths = (nm - peakNm) / fwhmNm;
          return StrictMath.exp(-FOUR_LN_2 * widths * widths);
        });
  }

  /**
   * The chromaticity of light of one wavelength.
   *
   * @param nm 380 to 700
   */
  public static Chromaticity monochromatic(double nm) {
    Checks.require("wavelength", nm, Observer.FIRST_NM, 700);
    double[] bar = new double[3];
    Observer.at(nm, bar);
    double sum = bar[0] + bar[1] + bar[2];
    return new Chromaticity(bar[0] / sum, bar[1] / sum);
  }

  /**
   * The peak that gives a Gaussian spectrum its dominant wavelength, told from the equal-energy
   * stimulus.
   *
   * @param dominantNm 440 to 640 nm
   * @param fwhmNm full width at half of the greatest power, 5 to 50 nm
   * @return the peak in nm, within 50 nm of the dominant wavelength
   */
  public static double peakOfDominant(double dominantNm, double fwhmNm) {
    Checks.require("dominant wavelength", dominantNm, 440, 640);
    Checks.require("full width at half maximum", fwhmNm, 5, 50);
    Chromaticity locus = monochromatic(dominantNm);
    double low = dominantNm - 40;
    double high = Math.min(dominantNm + 50, 700);
    // Along the locus from blue to red, spectra turn clockwise about the equal-energy stimulus.
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (turnFrom(locus, gaussian(middle, fwhmNm)) < 0) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return (low + high) / 2;
  }

  private static double turnFrom(Chromaticity from, Chromaticity to) {
    return (from.x() - EQUAL_ENERGY.x()) * (to.y() - EQUAL_ENERGY.y())
        - (from.y() - EQUAL_ENERGY.y()) * (to.x() - EQUAL_ENERGY.x());
  }
}
