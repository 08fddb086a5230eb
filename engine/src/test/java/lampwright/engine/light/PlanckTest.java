package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

class PlanckTest {
  // Computed with the colour-science library 0.4 for Python: Planck's law with the CIE 1931
  // observer.
  @ParameterizedTest
  @CsvFileSource(resources = "planckian-locus.csv", numLinesToSkip = 1)
  void locusAgreesWithColourScience(double kelvin, double x, double y) {
    Chromaticity point = Planck.chromaticity(kelvin);

    assertThat(point.x()).isCloseTo(x, within(0.0002));
    assertThat(point.y()).isCloseTo(y, within(0.0002));
  }

  // ISO/CIE 11664-2: Illuminant A is a black body of 2,856 K at x 0.44758, y 0.40745.
  @Test
  void illuminantAIsABlackBodyOf2856Kelvin() {
    Chromaticity point = Planck.chromaticity(2856);

    assertThat(point.x()).isCloseTo(0.44758, within(0.0002));
    assertThat(point.y()).isCloseTo(0.40745, within(0.0002));
  }

  @ParameterizedTest
  @ValueSource(doubles = {1666.9, 25000.1, 0, -3000, Double.NaN, Double.POSITIVE_INFINITY})
  void kelvinOutsideTheLocusIsRefused(double kelvin) {
    assertThatThrownBy(() -> Planck.chromaticity(kelvin))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("must be between 1,667 and 25,000");
  }
}
