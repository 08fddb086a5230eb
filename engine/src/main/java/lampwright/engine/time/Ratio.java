package lampwright.engine.time;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * An exact fraction. Edges in time are decided with these, so that frame 1,000,000 is as exact as
 * frame 1.
 *
 * <p>Not reduced to lowest terms after each step: the few steps of one frame stay short, and the
 * constants they start from are reduced.
 */
public final class Ratio implements Comparable<Ratio> {
  public static final Ratio ZERO = new Ratio(BigInteger.ZERO, BigInteger.ONE);
  public static final Ratio ONE = new Ratio(BigInteger.ONE, BigInteger.ONE);

  // A quotient of two integers of at most 53 bits is rounded correctly by one division of doubles.
  private static final int EXACT_BITS = 53;
  private static final MathContext WIDE = new MathContext(40);

  private final BigInteger numerator;
  private final BigInteger denominator;
  // The same as longs where both fit, for a Moment; else 0 over 0.
  private final long shortNumerator;
  private final long shortDenominator;

  private Ratio(BigInteger numerator, BigInteger denominator) {
    this.numerator = numerator;
    this.denominator = denominator;
    // One bit less than a long has, so that the negative fits too.
    boolean fits = numerator.bitLength() < Long.SIZE - 1 && denominator.bitLength() < Long.SIZE - 1;
    this.shortNumerator = fits ? numerator.longValue() : 0;
    this.shortDenominator = fits ? denominator.longValue() : 0;
  }

  /** Whether numerator and denominator fit longs. */
  boolean isShort() {
    return shortDenominator != 0;
  }

  /** Where it {@link #isShort}. */
  long shortNumerator() {
    return shortNumerator;
  }

  /** Where it {@link #isShort}; above 0. */
  long shortDenominator() {
    return shortDenominator;
  }

  /** The exact value of a decimal number, reduced. */
  public static Ratio of(BigDecimal value) {
    if (value.signum() == 0) {
      return ZERO;
    }
    return value.scale() <= 0
        ? new Ratio(value.toBigIntegerExact(), BigInteger.ONE)
        : new Ratio(value.unscaledValue(), BigInteger.TEN.pow(value.scale())).reduced();
  }

  public static Ratio of(long value) {
    return new Ratio(BigInteger.valueOf(value), BigInteger.ONE);
  }

  public Ratio plus(Ratio other) {
    if (denominator.equals(other.denominator)) {
      return new Ratio(numerator.add(other.numerator), denominator);
    }
    return new Ratio(
        numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
        denominator.multiply(other.denominator));
  }

  public Ratio minus(Ratio other) {
    return plus(new Ratio(other.numerator.negate(), other.denominator));
  }

  public Ratio times(Ratio other) {
    return new Ratio(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
  }

  public Ratio times(long factor) {
    return new Ratio(numerator.multiply(BigInteger.valueOf(factor)), denominator);
  }

  /**
   * This divided by a fraction above 0.
   *
   * @throws ArithmeticException if the divisor is not above 0
   */
  public Ratio over(Ratio divisor) {
    if (divisor.numerator.signum() <= 0) {
      throw new ArithmeticException("divisor: must be greater than 0");
    }
    return new Ratio(
        numerator.multiply(divisor.denominator), denominator.multiply(divisor.numerator));
  }

  /**
   * The greatest integer not above this.
   *
   * @throws ArithmeticException if it does not fit a long
   */
  public long floor() {
    BigInteger[] parts = numerator.divideAndRemainder(denominator);
    return (parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0]).longValueExact();
  }

  /** The least integer not below this. */
  public long ceiling() {
    return -new Ratio(numerator.negate(), denominator).floor();
  }

  /** The place within a repeating period above 0: at least 0, below the period. */
  public Ratio modulo(Ratio period) {
    BigInteger common = denominator.multiply(period.denominator);
    BigInteger whole = period.numerator.multiply(denominator);
    return new Ratio(numerator.multiply(period.denominator).mod(whole), common);
  }

  public int signum() {
    return numerator.signum();
  }

  public double doubleValue() {
    if (numerator.bitLength() <= EXACT_BITS && denominator.bitLength() <= EXACT_BITS) {
      return numerator.doubleValue() / denominator.doubleValue();
    }
    return new BigDecimal(numerator).divide(new BigDecimal(denominator), WIDE).doubleValue();
  }

  /** This as a decimal of so many places, rounded. */
  public BigDecimal decimal(int places, RoundingMode rounding) {
    return new BigDecimal(numerator).divide(new BigDecimal(denominator), places, rounding);
  }

  /** The same value in lowest terms. */
  public Ratio reduced() {
    if (numerator.signum() == 0) {
      return ZERO;
    }
    BigInteger common = numerator.gcd(denominator);
    return common.equals(BigInteger.ONE)
        ? this
        : new Ratio(numerator.divide(common), denominator.divide(common));
  }

  /** Orders by value. */
  @Override
  public int compareTo(Ratio other) {
    return denominator.equals(other.denominator)
        ? numerator.compareTo(other.numerator)
        : numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
  }

  /** Equal in value, whatever the terms. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Ratio ratio && compareTo(ratio) == 0;
  }

  @Override
  public int hashCode() {
    Ratio least = reduced();
    return 31 * least.numerator.hashCode() + least.denominator.hashCode();
  }

  @Override
  public String toString() {
    return denominator.equals(BigInteger.ONE)
        ? numerator.toString()
        : numerator + "/" + denominator;
  }
}
