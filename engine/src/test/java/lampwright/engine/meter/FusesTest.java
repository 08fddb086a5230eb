package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FusesTest {
  /** Practice: 1.25 of the peak; ratings of blade fuses, and of glass fuses below 1 A. */
  @ParameterizedTest
  @CsvSource({"3.66, 5", "4, 5", "4.01, 7.5", "0.8, 1", "0.81, 2", "0.61, 0.8", "0, 0.1", "24, 30"})
  void leastFuseCarriesAQuarterMoreThanThePeak(double peak, double rating) {
    assertThat(Fuses.atLeast(peak)).hasValue(rating);
  }

  @Test
  void noFuseCarriesMoreThanTheLargest() {
    assertThat(Fuses.atLeast(24.1)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"3.66, 5, true", "3.66, 4.9, false", "0.4, 0.5, true", "0.4, 0.45, false"})
  void fuseProtectsTheWireOrThereIsNone(double peak, double limit, boolean fits) {
    assertThat(Fuses.fitting(peak, limit).isPresent()).isEqualTo(fits);
  }
}
