package lampwright.exporters.table;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/**
 * A frame rate as numbers that C can hold without floating point.
 *
 * @param numerator of the frames per second, 1 to 4,294,967,295
 * @param denominator of the frames per second, 1 to 4,294,967,295
 * @param exact whether the fraction is the rate as written in the project
 * @param microseconds time of a frame in us, rounded half up
 * @param wholeMicroseconds whether that is exact
 */
record FrameRate(
    long numerator, long denominator, boolean exact, long microseconds, boolean wholeMicroseconds) {
  private static final BigInteger MAX = BigInteger.valueOf(0xFFFF_FFFFL);
  private static final BigInteger SECOND_US = BigInteger.valueOf(1_000_000);

  /**
   * A frame rate.
   *
   * @param framesPerSecond 1 to 1,000
   */
  static FrameRate of(BigDecimal framesPerSecond) {
    BigInteger scale = BigInteger.TEN.pow(Math.max(0, framesPerSecond.scale()));
    BigInteger scaled = framesPerSecond.multiply(new BigDecimal(scale)).toBigIntegerExact();
    BigInteger common = scaled.gcd(scale);
    BigInteger n = scaled.divide(common);
    BigInteger d = scale.divide(common);
    BigInteger[] near = nearest(n, d);
    BigInteger[] us = SECOND_US.multiply(d).divideAndRemainder(n);
    long rounded =
        new BigDecimal(SECOND_US.multiply(d))
            .divide(new BigDecimal(n), 0, RoundingMode.HALF_UP)
            .longValueExact();
    return new FrameRate(
        near[0].longValueExact(),
        near[1].longValueExact(),
        near[0].equals(n),
        rounded,
        us[1].signum() == 0);
  }

  // The last convergent of the continued fraction of n/d whose parts fit into 32 bits.
  private static BigInteger[] nearest(BigInteger n, BigInteger d) {
    BigInteger p0 = BigInteger.ZERO;
    BigInteger q0 = BigInteger.ONE;
    BigInteger p = BigInteger.ONE;
    BigInteger q = BigInteger.ZERO;
    BigInteger over = n;
    BigInteger under = d;
    while (under.signum() != 0) {
      BigInteger[] part = over.divideAndRemainder(under);
      BigInteger nextP = part[0].multiply(p).add(p0);
      BigInteger nextQ = part[0].multiply(q).add(q0);
      if (nextP.compareTo(MAX) > 0 || nextQ.compareTo(MAX) > 0) {
        break;
      }
      p0 = p;
      q0 = q;
      p = nextP;
      q = nextQ;
      over = under;
      under = part[1];
    }
    return new BigInteger[] {p, q};
  }
}
