package lampwright.engine.light;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A curve that is quick where the curve itself takes a power: a table in place of {@code
 * StrictMath.pow}, off by no more than {@link #error}. Who renders with it has to ask the curve
 * itself wherever that much could decide a byte.
 *
 * <p>The table has a cubic for each 512th: the Taylor polynomial of v^p about its middle m. What it
 * leaves out is |p (p-1) (p-2) (p-3) x^(p-4)| / 24 times |v - m|^4 for an x between v and m
 * (Lagrange). As p is at most 4, that is greatest at the least v of the table, which is 1/64, and
 * |v - m| is at most 1/1024. Rounding adds less than {@link #ROUNDING}: about ten steps, each with
 * half a unit in the last place of numbers up to 4, and the last place that pow may be off by.
 */
public final class NearCurve {
  private static final int INTERVALS = 512;
  private static final int TERMS = 4;
  private static final double LEAST = 1.0 / 64;
  private static final double HALF_INTERVAL = 0.5 / INTERVALS;
  private static final double ROUNDING = 0x1p-48;

  // A rig has one curve, so the last one made is mostly the next one wanted.
  private static volatile @Nullable NearCurve last;

  private final Curve curve;
  private final double exponent;
  private double @Nullable [] table;

  private NearCurve(Curve curve) {
    this.curve = curve;
    this.exponent =
        curve instanceof Curve.Power power
            ? power.gamma()
            : curve instanceof Curve.Srgb ? Curve.Srgb.EXPONENT : 1;
  }

  /** The quick form of a curve. */
  @SuppressWarnings("ReferenceEquality")
  public static NearCurve of(Curve curve) {
    NearCurve known = last;
    // Two records are compared only where need be: the first time takes a short command long.
    if (known == null || (known.curve != curve && !known.curve.equals(curve))) {
      known = new NearCurve(curve);
      last = known;
    }
    return known;
  }

  /** The most that {@link #light} is off; 0 where it is the curve itself. */
  public double error() {
    if (isPlain()) {
      return 0;
    }
    double p = exponent;
    double fourth = Math.abs(p * (p - 1) * (p - 2) * (p - 3)) * StrictMath.pow(LEAST, p - 4);
    double square = HALF_INTERVAL * HALF_INTERVAL;
    return fourth / 24 * square * square * 1.001 + ROUNDING;
  }

  /**
   * Linear light for a code value or level.
   *
   * @param v 0 to 1
   */
  public double light(double v) {
    if (curve instanceof Curve.Srgb) {
      return Curve.Srgb.isLinear(v) ? curve.light(v) : power(Curve.Srgb.base(v));
    }
    return isPlain() ? curve.light(v) : power(v);
  }

  // Whether the curve takes no power.
  private boolean isPlain() {
    return exponent == 1;
  }

  private double power(double v) {
    if (!(v >= LEAST && v < 1)) {
      return UnitPower.pow(v, exponent);
    }
    double[] terms = table;
    if (terms == null) {
      terms = makeTable();
      table = terms;
    }
    int interval = (int) (v * INTERVALS);
    int at = interval * TERMS;
    // Exact: both are multiples of v's last place, and their difference is less than v.
    double d = v - (interval + 0.5) / INTERVALS;
    return terms[at] + d * (terms[at + 1] + d * (terms[at + 2] + d * terms[at + 3]));
  }

  private double[] makeTable() {
    double[] terms = new double[INTERVALS * TERMS];
    Arrays.fill(terms, Double.NaN);
    double p = exponent;
    for (int i = (int) (LEAST * INTERVALS); i < INTERVALS; i++) {
      double middle = (i + 0.5) / INTERVALS;
      double value = StrictMath.pow(middle, p);
      terms[i * TERMS] = value;
      terms[i * TERMS + 1] = p * value / middle;
      terms[i * TERMS + 2] = p * (p - 1) / 2 * value / (middle * middle);
      terms[i * TERMS + 3] = p * (p - 1) * (p - 2) / 6 * value / (middle * middle * middle);
    }
    return terms;
  }
}
