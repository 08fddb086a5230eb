package lampwright.engine.second;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import org.apache.commons.math3.fraction.BigFraction;
import tools.jackson.databind.JsonNode;

/** Exact numbers of docs/rendering.md: fractions of whole numbers of any size. */
final class Exact {
  private static final int DOUBLE_BITS = 53;
  private static final MathContext FORTY_DIGITS = new MathContext(40, RoundingMode.HALF_UP);

  private Exact() {}

  /** The field as written, or the default, a decimal. */
  static BigFraction field(JsonNode object, String name, String otherwise) {
    return object.has(name) ? of(object.get(name).decimalValue()) : of(new BigDecimal(otherwise));
  }

  static BigFraction of(BigDecimal value) {
    BigInteger unscaled = value.unscaledValue();
    return value.scale() > 0
        ? new BigFraction(unscaled, BigInteger.TEN.pow(value.scale()))
        : new BigFraction(unscaled.multiply(BigInteger.TEN.pow(-value.scale())));
  }

  /** The double nearest to the fraction. */
  static double near(BigFraction value) {
    BigInteger above = value.getNumerator();
    BigInteger below = value.getDenominator();
    if (above.abs().bitLength() <= DOUBLE_BITS && below.bitLength() <= DOUBLE_BITS) {
      return above.doubleValue() / below.doubleValue();
    }
    return new BigDecimal(above).divide(new BigDecimal(below), FORTY_DIGITS).doubleValue();
  }

  static BigInteger floor(BigFraction value) {
    BigInteger[] parts = value.getNumerator().divideAndRemainder(value.getDenominator());
    return parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
  }

  /** At least 0 and below the period. */
  static BigFraction mod(BigFraction value, BigFraction period) {
    return value.subtract(period.multiply(floor(value.divide(period))));
  }

  static boolean less(BigFraction left, BigFraction right) {
    return left.compareTo(right) < 0;
  }

  static BigFraction least(BigFraction left, BigFraction right) {
    return right.compareTo(left) < 0 ? right : left;
  }
}
