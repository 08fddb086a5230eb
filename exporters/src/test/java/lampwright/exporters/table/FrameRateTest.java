package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FrameRateTest {
  @ParameterizedTest
  @CsvSource({
    "50, 50, 1, true, 20000, true",
    "1E+2, 100, 1, true, 10000, true",
    "1, 1, 1, true, 1000000, true",
    "30, 30, 1, true, 33333, false",
    "60, 60, 1, true, 16667, false",
    "29.97, 2997, 100, true, 33367, false",
    "12.5, 25, 2, true, 80000, true",
    "999.9999999, 9999999999, 10000000, false, 1000, false",
  })
  void rateIsAFractionAndATime(
      BigDecimal rate, long n, long d, boolean exact, long us, boolean wholeUs) {
    FrameRate got = FrameRate.of(rate);
    assertThat(got.exact()).isEqualTo(exact);
    assertThat(got.microseconds()).isEqualTo(us);
    assertThat(got.wholeMicroseconds()).isEqualTo(wholeUs);
    if (exact) {
      assertThat(got.numerator()).isEqualTo(n);
      assertThat(got.denominator()).isEqualTo(d);
    }
  }

  /** 100/3 is what the decimals mean, and the last convergent below 2^32. */
  @Test
  void rateOfManyDecimalsIsTheNearestFraction() {
    FrameRate got = FrameRate.of(new BigDecimal("33.333333333333333333"));
    assertThat(got.exact()).isFalse();
    assertThat(got.numerator()).isEqualTo(100);
    assertThat(got.denominator()).isEqualTo(3);
    assertThat(got.microseconds()).isEqualTo(30000);
    assertThat(got.wholeMicroseconds()).isFalse();
  }
}
