package lampwright.engine.light;

/**
 * x^y for x from 0 to 1 and y from 1 to 4, bit for bit what {@code StrictMath.pow} gives: the same
 * steps in the same order, those of e_pow.c of fdlibm 5.3, which Java's specification names for it.
 * It leaves out what other numbers need, is twice as fast, and makes no objects, which Java 17's
 * own form does.
 *
 * <p>log2(x) is found in two parts, high and low, from s = (m - b) / (m + b), where m is the
 * mantissa and b is 1 or 1.5; then y log2(x) in two parts, and 2 to the power of that.
 *
 * <p>The notice of fdlibm: Copyright (C) 2004 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted, provided that
 * this notice is preserved.
 */
final class UnitPower {
  private static final long HIGH_HALF = 0xFFFF_FFFF_0000_0000L;
  private static final int EXPONENT_BITS = 20;
  private static final int BIAS = 0x3ff;
  private static final int MANTISSA = 0x000fffff;
  private static final int ONE = 0x00100000;

  /** The high word of the least normal number. */
  private static final int LEAST_NORMAL = ONE;

  /** Mantissas up to here, sqrt(3/2), are taken about 1, and below {@link #SQRT_3} about 1.5. */
  private static final int SQRT_3_HALVES = 0x3988E;

  private static final int SQRT_3 = 0xBB67A;

  // (3/2) (log(x) - 2 s - 2/3 s^3) as a polynomial in s^2.
  private static final double L1 = 0x1.3333333333303p-1;
  private static final double L2 = 0x1.b6db6db6fabffp-2;
  private static final double L3 = 0x1.55555518f264dp-2;
  private static final double L4 = 0x1.17460a91d4101p-2;
  private static final double L5 = 0x1.d864a93c9db65p-3;
  private static final double L6 = 0x1.a7e284a454eefp-3;
  // The exponential near 0.
  private static final double P1 = 0x1.555555555553ep-3;
  private static final double P2 = -0x1.6c16c16bebd93p-9;
  private static final double P3 = 0x1.1566aaf25de2cp-14;
  private static final double P4 = -0x1.bbd41c5d26bf1p-20;
  private static final double P5 = 0x1.6376972bea4d0p-25;
  // ln 2, 2 / (3 ln 2) and log2(1.5), and each in two parts.
  private static final double LN2 = 0x1.62e42fefa39efp-1;
  private static final double LN2_HIGH = 0x1.62e43p-1;
  private static final double LN2_LOW = -0x1.05c610ca86c39p-29;
  private static final double CP = 0x1.ec709dc3a03fdp-1;
  private static final double CP_HIGH = 0x1.ec709ep-1;
  private static final double CP_LOW = -0x1.e2fe0145b01f5p-28;
  private static final double LOG_1_5_HIGH = 0x1.2b8034p-1;
  private static final double LOG_1_5_LOW = 0x1.cfdeb43cfd006p-27;

  /** A logarithm of the result below this is left to StrictMath: it is nearly 0. */
  private static final double LEAST_LOG = -1000;

  private UnitPower() {}

  /**
   * A power.
   *
   * @param x 0 to 1
   * @param y 1 to 4
   */
  static double pow(double x, double y) {
    long bits = Double.doubleToRawLongBits(x);
    int high = (int) (bits >> 32);
    if (y == 1) {
      return x;
    }
    if (y == 2) {
      return x * x;
    }
    if (high < LEAST_NORMAL || x >= 1) {
      return x == 0 || x == 1 ? x : StrictMath.pow(x, y);
    }
    int exponent = (high >> EXPONENT_BITS) - BIAS;
    int mantissa = high & MANTISSA;
    boolean aboutOneAndAHalf = mantissa > SQRT_3_HALVES && mantissa < SQRT_3;
    mantissa |= BIAS << EXPONENT_BITS;
    if ((mantissa & MANTISSA) >= SQRT_3) {
      exponent++;
      mantissa -= ONE;
    }
    double m = ofWords(mantissa, bits);
    double b = aboutOneAndAHalf ? 1.5 : 1;

    // s in two parts.
    double u = m - b;
    double v = 1.0 / (m + b);
    double s = u * v;
    double sHigh = highPart(s);
    int sumHigh = ((mantissa >> 1) | 0x20000000) + 0x00080000 + (aboutOneAndAHalf ? 0x40000 : 0);
    double tHigh = ofWords(sumHigh, 0);
    double tLow = m - (tHigh - b);
    double sLow = v * ((u - sHigh * tHigh) - sHigh * tLow);

    // log2(x) in two parts.
    double square = s * s;
    double r =
        square
            * square
            * (L1 + square * (L2 + square * (L3 + square * (L4 + square * (L5 + square * L6)))));
    r += sLow * (sHigh + s);
    square = sHigh * sHigh;
    tHigh = highPart(3.0 + square + r);
    tLow = r - ((tHigh - 3.0) - square);
    u = sHigh * tHigh;
    v = sLow * tHigh + tLow * s;
    double pHigh = highPart(u + v);
    double pLow = v - (pHigh - u);
    double zHigh = CP_HIGH * pHigh;
    double zLow = CP_LOW * pHigh + pLow * CP + (aboutOneAndAHalf ? LOG_1_5_LOW : 0);
    double ofBase = aboutOneAndAHalf ? LOG_1_5_HIGH : 0;
    double logHigh = highPart(((zHigh + zLow) + ofBase) + exponent);
    double logLow = zLow - (((logHigh - exponent) - ofBase) - zHigh);

    // The same times y.
    double yHigh = highPart(y);
    pLow = (y - yHigh) * logHigh + y * logLow;
    pHigh = yHigh * logHigh;
    double log = pLow + pHigh;
    return log < LEAST_LOG ? StrictMath.pow(x, y) : powerOf2(log, pHigh, pLow);
  }

  // 2 to the power of the sum of two parts, which is a number from -1000 to 0.
  private static double powerOf2(double sum, double pHigh, double pLow) {
    int word = (int) (Double.doubleToRawLongBits(sum) >> 32);
    int size = word & 0x7fffffff;
    int whole = 0;
    if (size > 0x3fe00000) {
      // More than a half: split off the nearest whole number.
      int rounded = word + (ONE >> ((size >> EXPONENT_BITS) - BIAS + 1));
      int places = ((rounded & 0x7fffffff) >> EXPONENT_BITS) - BIAS;
      pHigh -= ofWords(rounded & ~(MANTISSA >> places), 0);
      whole = -(((rounded & MANTISSA) | ONE) >> (EXPONENT_BITS - places));
    }
    double t = highPart(pLow + pHigh);
    double u = t * LN2_HIGH;
    double v = (pLow - (t - pHigh)) * LN2 + t * LN2_LOW;
    double z = u + v;
    double w = v - (z - u);
    t = z * z;
    double t1 = z - t * (P1 + t * (P2 + t * (P3 + t * (P4 + t * P5))));
    double r = (z * t1) / (t1 - 2.0) - (w + z * w);
    z = 1.0 - (r - z);
    return Double.longBitsToDouble(Double.doubleToRawLongBits(z) + ((long) whole << 52));
  }

  private static double highPart(double value) {
    return Double.longBitsToDouble(Double.doubleToRawLongBits(value) & HIGH_HALF);
  }

  private static double ofWords(int high, long low) {
    return Double.longBitsToDouble(((long) high << 32) | (low & ~HIGH_HALF));
  }
}
