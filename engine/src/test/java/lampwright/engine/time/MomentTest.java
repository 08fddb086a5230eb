package lampwright.engine.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Moments against ratios, which count with BigInteger, and quotients against BigDecimal. */
class MomentTest {
  private static final int TRIES = 50_000;

  private final Random random = new Random(41);

  @Test
  void everyStepAgreesWithRatios() {
    Moment moment = new Moment();
    for (int i = 0; i < TRIES; i++) {
      Ratio a = ratio();
      Ratio b = ratio();
      Ratio c = above0();
      moment.set(a);
      assertThat(moment.ratio()).isEqualTo(a);
      assertThat(Integer.signum(moment.compareTo(b))).isEqualTo(Integer.signum(a.compareTo(b)));
      moment.setSum(Moment.of(a), b);
      assertThat(moment.ratio()).isEqualTo(a.plus(b));
      moment.setDifference(Moment.of(a), b);
      assertThat(moment.ratio()).isEqualTo(a.minus(b));
      moment.setDifference(a, Moment.of(b));
      assertThat(moment.ratio()).isEqualTo(a.minus(b));
      moment.modulo(c);
      assertThat(moment.ratio()).isEqualTo(a.minus(b).modulo(c));
      long factor = random.nextLong() >> random.nextInt(64);
      moment.setProduct(a, factor);
      assertThat(moment.ratio()).isEqualTo(a.times(factor));
    }
  }

  @Test
  void quotientIsTheNearestDouble() {
    MathContext wide = new MathContext(60);
    for (int i = 0; i < TRIES; i++) {
      Ratio a = ratio();
      Ratio b = above0();
      double quotient = Moment.of(a).over(b);
      // Exact sources: 60 digits tell any two such quotients apart.
      BigDecimal exact = a.over(b).decimal(400, java.math.RoundingMode.HALF_EVEN).round(wide);
      assertThat(quotient).as("%s / %s", a, b).isEqualTo(exact.doubleValue());
      assertThat(quotient).isEqualTo(a.over(b).doubleValue());
    }
  }

  @Test
  void floorOfAQuotientAgreesWithRatios() {
    for (int i = 0; i < TRIES; i++) {
      Ratio a = ratio();
      Ratio b = above0();
      BigInteger floor =
          new BigDecimal(a.over(b).decimal(0, java.math.RoundingMode.FLOOR).toString())
              .toBigInteger();
      if (floor.bitLength() < 64) {
        assertThat(Moment.of(a).floorOver(b)).isEqualTo(floor.longValue());
      } else {
        assertThrows(ArithmeticException.class, () -> Moment.of(a).floorOver(b));
      }
    }
  }

  @Test
  void longsThatOverflowAreCountedOnExactly() {
    Ratio large = Ratio.of(Long.MAX_VALUE);
    Moment moment = new Moment();
    moment.setProduct(large, Long.MAX_VALUE);
    moment.setSum(moment, Ratio.ONE);
    assertThat(moment.ratio()).isEqualTo(large.times(Long.MAX_VALUE).plus(Ratio.ONE));
    moment.modulo(Ratio.of(10));
    // (2^63 - 1)^2 + 1 ends in 0: 7 x 7 + 1.
    assertThat(moment.ratio()).isEqualTo(Ratio.ZERO);
  }

  @Test
  void divisorOf0IsRefused() {
    Moment moment = Moment.of(Ratio.ONE);
    assertThrows(ArithmeticException.class, () -> moment.over(Ratio.ZERO));
    assertThrows(ArithmeticException.class, () -> moment.floorOver(Ratio.ZERO));
  }

  // From decimals of a few digits to fractions past what longs hold.
  private Ratio ratio() {
    Ratio above = above0();
    return random.nextInt(4) == 0 ? Ratio.ZERO.minus(above) : above;
  }

  private Ratio above0() {
    return switch (random.nextInt(4)) {
      case 0 -> Ratio.of(1 + random.nextInt(100_000));
      case 1 -> Ratio.of(BigDecimal.valueOf(1 + random.nextInt(90_000_000), 3));
      case 2 -> Ratio.of(1 + bits(62)).over(Ratio.of(1 + bits(62)));
      default ->
          Ratio.of(new BigDecimal(new BigInteger(1 + random.nextInt(120), random), 15))
              .plus(Ratio.of(BigDecimal.valueOf(1, 15)));
    };
  }

  private long bits(int most) {
    return random.nextLong() >>> (64 - 1 - random.nextInt(most));
  }
}
