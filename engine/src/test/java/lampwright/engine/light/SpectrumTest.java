package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SpectrumTest {
  // The figures below are given to four digits.
  private static final Offset<Double> FOUR_DIGITS = within(0.00005 + 1e-12);

  // Computed from the table of ISO/CIE 11664-1 apart from this code.
  @ParameterizedTest
  @CsvSource({
    "465, 0.1355, 0.0399",
    "470, 0.1241, 0.0578",
    "520, 0.0743, 0.8338",
    "525, 0.1142, 0.8262",
    "590, 0.5752, 0.4242",
    "620, 0.6915, 0.3083",
    "625, 0.7006, 0.2993"
  })
  void monochromaticLightLiesOnTheLocus(double nm, double x, double y) {
    Chromaticity point = Spectrum.monochromatic(nm);

    assertThat(point.x()).isCloseTo(x, FOUR_DIGITS);
    assertThat(point.y()).isCloseTo(y, FOUR_DIGITS);
  }

  // Computed with the colour-science library 0.4 for Python, which sums at 1 nm.
  @ParameterizedTest
  @CsvSource({"630, 18, 0.7036, 0.2963", "520, 33, 0.1164, 0.7550", "465, 22, 0.1353, 0.0456"})
  void gaussianEmitterAgreesWithColourScience(double peak, double fwhm, double x, double y) {
    Chromaticity point = Spectrum.gaussian(peak, fwhm);

    assertThat(point.x()).isCloseTo(x, FOUR_DIGITS);
    assertThat(point.y()).isCloseTo(y, FOUR_DIGITS);
  }

  // ISO/CIE 11664-1: the colour matching functions have equal sums, so that an equal-energy
  // spectrum lies at a third; the table keeps that to about four digits.
  @Test
  void equalEnergyLiesAtAThird() {
    Chromaticity point = Spectrum.chromaticity(nm -> 1);

    assertThat(point.x()).isCloseTo(1.0 / 3, within(0.0001));
    assertThat(point.y()).isCloseTo(1.0 / 3, within(0.0001));
  }

  @Test
  void observerPassesThroughItsOwnRows() {
    double[] bar = new double[3];
    Observer.at(555, bar);

    // ISO/CIE 11664-1: y-bar is 1 at 555 nm.
    assertThat(bar).containsExactly(new double[] {0.512050, 1, 0.005750}, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(doubles = {380, 381.5, 779, 780})
  void observerReachesBothEndsOfItsTable(double nm) {
    double[] bar = new double[3];
    Observer.at(nm, bar);

    assertThat(bar[0]).isBetween(0.0, 0.01);
  }

  @ParameterizedTest
  @ValueSource(doubles = {379.9, 780.1, Double.NaN})
  void observerRefusesWavelengthsOutsideItsTable(double nm) {
    assertThatThrownBy(() -> Observer.at(nm, new double[3]))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("must be between 380 and 780");
  }

  // The point, the equal-energy stimulus and the locus at the dominant wavelength lie in a line,
  // which is what a dominant wavelength means (CIE 127).
  @ParameterizedTest
  @CsvSource({"622.5, 18", "523.5, 33", "466, 22", "590, 16", "470, 25"})
  void peakOfDominantKeepsTheDominantWavelength(double dominant, double fwhm) {
    Chromaticity locus = Spectrum.monochromatic(dominant);
    Chromaticity point = Spectrum.gaussian(Spectrum.peakOfDominant(dominant, fwhm), fwhm);

    double third = 1.0 / 3;
    double turn =
        (locus.x() - third) * (point.y() - third) - (locus.y() - third) * (point.x() - third);
    double along =
        (locus.x() - third) * (point.x() - third) + (locus.y() - third) * (point.y() - third);
    assertThat(turn).isCloseTo(0, within(1e-9));
    assertThat(along).isPositive();
  }

  @Test
  void darkSpectrumIsRefused() {
    assertThatThrownBy(() -> Spectrum.chromaticity(nm -> 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("greater than 0 somewhere");
  }

  @Test
  void endlessSpectrumIsRefused() {
    assertThatThrownBy(() -> Spectrum.chromaticity(nm -> Double.POSITIVE_INFINITY))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
