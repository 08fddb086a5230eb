package lampwright.engine.time;

import org.jspecify.annotations.Nullable;

/**
 * An exact time that is set anew for each frame: as exact as a {@link Ratio}, but without making
 * objects. It is a fraction of two longs; where one would overflow, and only there, it counts with
 * ratios. For one thread.
 */
public final class Moment {
  // A quotient of two integers of at most 53 bits is rounded correctly by one division of doubles.
  private static final long EXACT = 1L << 53;

  private long numerator;
  private long denominator = 1;
  // The value where the longs can't hold it.
  private @Nullable Ratio wide;

  /** A moment of 0. */
  public Moment() {}

  /** A moment that is set to a value. */
  public static Moment of(Ratio value) {
    Moment moment = new Moment();
    moment.set(value);
    return moment;
  }

  /** The value now. */
  public Ratio ratio() {
    return wide != null ? wide : Ratio.of(numerator).over(Ratio.of(denominator));
  }

  public void set(Ratio value) {
    if (value.isShort()) {
      set(value.shortNumerator(), value.shortDenominator());
    } else {
      wide = value;
    }
  }

  /** Becomes a fraction times a whole number. */
  public void setProduct(Ratio value, long factor) {
    if (value.isShort() && fits(value.shortNumerator(), factor)) {
      set(value.shortNumerator() * factor, value.shortDenominator());
    } else {
      settle(value.times(factor));
    }
  }

  /** Becomes the sum of another time and a fraction. */
  public void setSum(Moment a, Ratio b) {
    add(a, b, 1);
  }

  /** Becomes another time less a fraction. */
  public void setDifference(Moment a, Ratio b) {
    add(a, b, -1);
  }

  /** Becomes a fraction less another time. */
  public void setDifference(Ratio a, Moment b) {
    add(b, a, -1);
    if (wide != null) {
      wide = Ratio.ZERO.minus(wide);
    } else {
      numerator = -numerator;
    }
  }

  private void add(Moment a, Ratio b, int sign) {
    if (a.wide == null && b.isShort()) {
      long n = sign * b.shortNumerator();
      long d = b.shortDenominator();
      // The factor that two denominators have in common is only looked for where it is needed.
      if (addShort(a, n, d, d == a.denominator ? d : 1)
          || addShort(a, n, d, commonFactor(a.denominator, d))) {
        return;
      }
    }
    settle(sign > 0 ? a.ratio().plus(b) : a.ratio().minus(b));
  }

  private boolean addShort(Moment a, long n, long d, long common) {
    long scale = common == 1 ? d : d / common;
    long otherScale = common == 1 ? a.denominator : a.denominator / common;
    boolean fits =
        fits(a.numerator, scale)
            && fits(n, otherScale)
            && fits(a.denominator, scale)
            && sumFits(a.numerator * scale, n * otherScale);
    if (fits) {
      set(a.numerator * scale + n * otherScale, a.denominator * scale);
    }
    return fits;
  }

  /** Becomes its own place within a repeating period above 0: at least 0, below the period. */
  public void modulo(Ratio period) {
    if (wide == null && period.isShort()) {
      long n = period.shortNumerator();
      long d = period.shortDenominator();
      if (moduloShort(n, d, d == denominator ? d : 1)
          || moduloShort(n, d, commonFactor(denominator, d))) {
        return;
      }
    }
    settle(ratio().modulo(period));
  }

  private boolean moduloShort(long n, long d, long common) {
    long scale = common == 1 ? d : d / common;
    long otherScale = common == 1 ? denominator : denominator / common;
    boolean fits = fits(numerator, scale) && fits(n, otherScale) && fits(denominator, scale);
    if (fits) {
      set(Math.floorMod(numerator * scale, n * otherScale), denominator * scale);
    }
    return fits;
  }

  /** Below 0, 0 or above 0, as this is less than a fraction, equal or greater. */
  public int compareTo(Ratio other) {
    if (wide != null || !other.isShort()) {
      return ratio().compareTo(other);
    }
    if (other.shortDenominator() == denominator) {
      return Long.compare(numerator, other.shortNumerator());
    }
    long high = Math.multiplyHigh(numerator, other.shortDenominator());
    long otherHigh = Math.multiplyHigh(other.shortNumerator(), denominator);
    return high != otherHigh
        ? Long.compare(high, otherHigh)
        : Long.compareUnsigned(
            numerator * other.shortDenominator(), other.shortNumerator() * denominator);
  }

  /** This over a fraction above 0, rounded to the nearest double. */
  public double over(Ratio divisor) {
    if (wide == null && divisor.isShort()) {
      long n = divisor.shortNumerator();
      long d = divisor.shortDenominator();
      if (n > 0 && fits(numerator, d) && fits(denominator, n)) {
        long above = numerator * d;
        long below = denominator * n;
        if (!isExact(above) || !isExact(below)) {
          long common = commonFactor(above, below);
          above /= common;
          below /= common;
        }
        if (isExact(above) && isExact(below)) {
          return (double) above / below;
        }
      }
    }
    return ratio().over(divisor).doubleValue();
  }

  /**
   * The greatest integer not above this over a fraction above 0.
   *
   * @throws ArithmeticException if it does not fit a long
   */
  public long floorOver(Ratio divisor) {
    if (wide == null && divisor.isShort()) {
      long n = divisor.shortNumerator();
      long d = divisor.shortDenominator();
      if (n > 0 && fits(numerator, d) && fits(denominator, n)) {
        return Math.floorDiv(numerator * d, denominator * n);
      }
    }
    return ratio().over(divisor).floor();
  }

  private void set(long above, long below) {
    numerator = above;
    denominator = below;
    wide = null;
  }

  // What comes of wide numbers is often short again in lowest terms.
  private void settle(Ratio value) {
    set(value.reduced());
  }

  private static boolean fits(long a, long b) {
    return Math.multiplyHigh(a, b) == (a * b) >> 63;
  }

  private static boolean sumFits(long a, long b) {
    long sum = a + b;
    return ((a ^ sum) & (b ^ sum)) >= 0;
  }

  private static boolean isExact(long whole) {
    return whole <= EXACT && whole >= -EXACT;
  }

  private static long commonFactor(long a, long b) {
    while (b != 0) {
      long rest = a % b;
      a = b;
      b = rest;
    }
    return Math.abs(a);
  }

  @Override
  public String toString() {
    return ratio().toString();
  }
}
