package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Powers against Java's own StrictMath, whose every bit Java's specification fixes. */
class UnitPowerTest {
  private static final int TRIES = 120_000;
  private static final long ONE = Double.doubleToRawLongBits(1);

  private final SplittableRandom random = new SplittableRandom(41);

  @Test
  void everyBitIsStrictMaths() {
    for (double y :
        new double[] {1, Math.nextUp(1.0), 1.3, 2, 2.2, 2.4, 3, Math.nextDown(4.0), 4}) {
      check(y, TRIES);
    }
    for (int i = 0; i < 200; i++) {
      check(1 + 3 * random.nextDouble(), TRIES / 100);
    }
  }

  // Even numbers, numbers of every size, codes and the edges between the ranges.
  private void check(double y, int tries) {
    for (int i = 0; i < tries; i++) {
      equal(random.nextDouble(), y);
      equal(Double.longBitsToDouble(random.nextLong(ONE)), y);
      equal(random.nextInt(256) / 255.0, y);
    }
    for (int exponent = -1074; exponent <= 0; exponent++) {
      for (double mantissa : new double[] {1, Math.sqrt(1.5), 1.5, Math.sqrt(3)}) {
        double edge = Math.scalb(mantissa, exponent);
        for (int ulps = -2; ulps <= 2; ulps++) {
          double x = Double.longBitsToDouble(Math.max(0, Double.doubleToRawLongBits(edge) + ulps));
          if (x <= 1) {
            equal(x, y);
          }
        }
        // The base is told from the high word alone.
        long word = Double.doubleToRawLongBits(edge) & 0xFFFF_FFFF_0000_0000L;
        for (long bits : new long[] {word - 1, word, word + 0xFFFF_FFFFL, word + 0x1_0000_0000L}) {
          if (bits >= 0 && bits <= ONE) {
            equal(Double.longBitsToDouble(bits), y);
          }
        }
      }
    }
    // Where the result is a whole or half power of two, or next to one.
    for (int half = 0; half <= 60; half++) {
      double x = StrictMath.pow(2, -half / 2.0 / y);
      equal(x, y);
      equal(Math.nextDown(x), y);
      equal(Math.min(1, Math.nextUp(x)), y);
    }
  }

  private static void equal(double x, double y) {
    long got = Double.doubleToRawLongBits(UnitPower.pow(x, y));
    long want = Double.doubleToRawLongBits(StrictMath.pow(x, y));
    if (got != want) {
      assertThat(UnitPower.pow(x, y)).as("%s ^ %s", x, y).isEqualTo(StrictMath.pow(x, y));
    }
  }
}
