package lampwright.engine.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class RatioTest {
  @Test
  void decimalIsExact() {
    assertThat(Ratio.of(new BigDecimal("0.1")).times(10)).isEqualTo(Ratio.ONE);
  }

  @Test
  void floorAndCeilingRoundTowardsTheirSides() {
    Ratio third = Ratio.of(-1).over(Ratio.of(3));
    assertThat(third.floor()).isEqualTo(-1);
    assertThat(third.ceiling()).isZero();
    assertThat(Ratio.of(7).floor()).isEqualTo(7);
    assertThat(Ratio.of(7).ceiling()).isEqualTo(7);
  }

  @Test
  void moduloStaysWithinThePeriod() {
    Ratio period = Ratio.of(new BigDecimal("2.5"));
    assertThat(Ratio.of(5).modulo(period)).isEqualTo(Ratio.ZERO);
    assertThat(Ratio.of(-1).modulo(period)).isEqualTo(Ratio.of(new BigDecimal("1.5")));
  }

  @Test
  void divisorOf0IsRefused() {
    assertThrows(ArithmeticException.class, () -> Ratio.ONE.over(Ratio.ZERO));
  }

  @Property
  void agreesWithDoubleArithmetic(
      @ForAll @IntRange(min = -100000, max = 100000) int a,
      @ForAll @IntRange(min = 1, max = 100000) int b,
      @ForAll @IntRange(min = -100000, max = 100000) int c,
      @ForAll @IntRange(min = 1, max = 100000) int d) {
    Ratio x = Ratio.of(a).over(Ratio.of(b));
    Ratio y = Ratio.of(c).over(Ratio.of(d));
    assertThat(x.plus(y).doubleValue())
        .isCloseTo((double) a / b + (double) c / d, within(1e-9 * (1 + Math.abs((double) a / b))));
    assertThat(x.minus(y).plus(y)).isEqualTo(x).hasSameHashCodeAs(x);
    assertThat(x.compareTo(y)).isEqualTo(Long.compare((long) a * d, (long) c * b));
    assertThat(x.floor()).isEqualTo(Math.floorDiv(a, b));
  }

  @Test
  void quotientOfLongNumbersIsRounded() {
    Ratio tiny = Ratio.of(new BigDecimal("0.3333333333333333333333333333333333"));
    assertThat(tiny.doubleValue()).isEqualTo(1.0 / 3);
  }
}
