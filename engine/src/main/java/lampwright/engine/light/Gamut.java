package lampwright.engine.light;

import java.util.Map;
import lampwright.engine.check.Checks;

/**
 * The chromaticities that a package of three or four emitters can mix, and the brightest mix at
 * each of them.
 *
 * <p>Chromaticities add as weights do: with s = X + Y + Z of an emitter at full drive, a mix of
 * drives d lies at the mean of the emitters' chromaticities weighted by d s. Three emitters have
 * one set of weights for a target. A fourth gives one degree of freedom: every set is {@code w + t
 * c} with one t and a fixed c. The brightest mix has the least {@code max((w + t c) / s)}, the
 * greatest drive before it is scaled to 1. That is a convex chain of straight pieces over t, so its
 * minimum lies at an end of the range of t or where two pieces meet: all of them are tried.
 */
public final class Gamut {
  /**
   * Weights below 0 by no more than this are rounding. It moves a chromaticity by less than 1e-9.
   */
  private static final double ROUNDING = 1e-9;

  /** Two greatest drives that differ by less, as a share, are equal; then less t is taken. */
  private static final double TIE = 1e-13;

  /** A drive as near to 1 as this is 1. */
  private static final double FULL_ROUNDING = 1e-12;

  /** Emitters known to four digits that span less of the x y diagram lie in a line. */
  private static final double LEAST_SPAN = 1e-5;

  /** No light of one wavelength lies lower in the diagram than y = 0.0048 (ISO/CIE 11664-1). */
  private static final double LEAST_Y = 0.001;

  private static final int SLOTS = Mixer.SLOTS;

  private final int emitters;
  private final Hull hull;
  // Slots of the three emitters whose weights are solved for, and of the fourth (or -1).
  private final int a;
  private final int b;
  private final int c;
  private final int fourth;
  // Weights of a and b are affine in the target: base + byX x + byY y.
  private final double[] weightA;
  private final double[] weightB;
  // For each slot: 1 / s, the change of its weight with t, and that change over s.
  private final double[] inverseSum = new double[SLOTS];
  private final double[] change = new double[SLOTS];
  private final double[] slope = new double[SLOTS];

  /**
   * The gamut of a package.
   *
   * @param emitters red, green and blue, with or without white
   * @throws IllegalArgumentException if one of the three is missing, if they span no area of the
   *     diagram, or if one lies where no light does
   */
  public Gamut(Map<EmitterKind, Emitter> emitters) {
    this.emitters = emitters.size();
    double[] x = new double[SLOTS];
    double[] y = new double[SLOTS];
    for (EmitterKind kind : EmitterKind.values()) {
      Emitter emitter = emitters.get(kind);
      if (emitter == null) {
        if (kind != EmitterKind.WHITE) {
          throw new IllegalArgumentException(
              "emitters: no " + kind.key() + ": must have at least r, g and b");
        }
        continue;
      }
      int slot = kind.slot();
      x[slot] = emitter.chromaticity().x();
      y[slot] = emitter.chromaticity().y();
      if (y[slot] < LEAST_Y) {
        throw new IllegalArgumentException(
            "emitters."
                + kind.key()
                + ".y: "
                + Checks.plain(y[slot])
                + ": must be between 0.001 and 1");
      }
      inverseSum[slot] = y[slot] / emitter.millicandela();
    }

    int out = leftOut(this.emitters, x, y);
    fourth = this.emitters == SLOTS ? out : -1;
    a = out == 0 ? 1 : 0;
    b = out <= 1 ? 2 : 1;
    c = out <= 2 ? 3 : 2;
    double span = span(x, y, a, b, c);
    if (!(Math.abs(span) >= LEAST_SPAN)) {
      throw new IllegalArgumentException(
          "emitters: "
              + points(this.emitters, x, y)
              + ": lie in a line or at one point: must span a triangle in the xy"
              + " diagram");
    }
    weightA = weight(x, y, b, c, span);
    weightB = weight(x, y, c, a, span);
    if (fourth >= 0) {
      change[fourth] = 1;
      change[a] = -settle(at(weightA, x[fourth], y[fourth]));
      change[b] = -settle(at(weightB, x[fourth], y[fourth]));
      change[c] = -settle(1 + change[a] + change[b]);
    }
    for (int i = 0; i < SLOTS; i++) {
      slope[i] = change[i] * inverseSum[i];
    }
    hull = new Hull(x, y, this.emitters);
  }

  /** The brightest mix at a chromaticity, or at the nearest to it that can be mixed. */
  public MatchedMix brightest(Chromaticity target) {
    double[] drives = new double[SLOTS];
    double light = brightest(target.x(), target.y(), drives, 0);
    Chromaticity reached = target;
    double distance = 0;
    if (!contains(target)) {
      double[] nearest = new double[2];
      hull.nearest(target.x(), target.y(), nearest, 0);
      reached = new Chromaticity(nearest[0], nearest[1]);
      distance = target.distanceTo(reached);
    }
    return new MatchedMix(
        target,
        reached,
        distance,
        new Colour.Drive(drives[0], drives[1], drives[2], drives[3]),
        light);
  }

  /** Whether the package can mix a chromaticity, to within rounding. */
  public boolean contains(Chromaticity target) {
    double[] weights = new double[SLOTS];
    weights(target.x(), target.y(), weights, 0);
    return lowest(weights, 0) <= highest(weights, 0) + ROUNDING && rest(weights, 0);
  }

  /**
   * Writes the drives of the brightest mix at a chromaticity, or at the nearest to it that can be
   * mixed, to {@code into[at .. at + 3]}, and makes nothing on the way.
   *
   * @return the light of those drives in mcd
   */
  double brightest(double x, double y, double[] into, int at) {
    double reachedY = reach(x, y, into, at);
    double low = lowest(into, at);
    double high = highest(into, at);
    if (low > high) {
      // On the border of the gamut the two ends are one, and only rounding sets them apart.
      low = (low + high) / 2;
      high = low;
    }
    double t = fourth < 0 ? 0 : leastOfGreatest(low, high, into, at);
    double greatest = 0;
    for (int i = 0; i < SLOTS; i++) {
      double drive = Math.max(0, (into[at + i] + t * change[i]) * inverseSum[i]);
      into[at + i] = drive;
      greatest = Math.max(greatest, drive);
    }
    for (int i = 0; i < SLOTS; i++) {
      double share = into[at + i] / greatest;
      // At the best mix two emitters are often both full; rounding must not set them apart.
      into[at + i] = share > 1 - FULL_ROUNDING ? 1 : share;
    }
    return reachedY / greatest;
  }

  /**
   * Writes the drives of a chromaticity, or of the nearest to it that can be mixed, without the
   * emitter that is free to choose, to {@code into[at .. at + 3]}. Some may be below 0 or above 1:
   * the others follow by adding a multiple of {@link #slope}.
   *
   * @param most the luminance wanted in mcd; it is less where the package can't be so bright
   * @return the luminance in mcd
   */
  double unsplit(double x, double y, double most, double[] into, int at) {
    double light = Math.min(most, brightest(x, y, into, at));
    double sum = light / reach(x, y, into, at);
    for (int i = 0; i < SLOTS; i++) {
      double drive = into[at + i] * sum * inverseSum[i];
      // At the greatest luminance a drive is full, and half of it has to be 127.5 to round as such.
      into[at + i] = Math.abs(drive - 1) < FULL_ROUNDING ? 1 : drive;
    }
    return light;
  }

  /** How the drive of each emitter changes with that of the free one, times one factor. */
  double[] slope() {
    return slope.clone();
  }

  // Writes the weights of a chromaticity, or of the nearest that can be mixed; gives its y.
  private double reach(double x, double y, double[] into, int at) {
    weights(x, y, into, at);
    if (lowest(into, at) <= highest(into, at) + ROUNDING && rest(into, at)) {
      return y;
    }
    hull.nearest(x, y, into, at);
    double reachedY = into[at + 1];
    weights(into[at], reachedY, into, at);
    return reachedY;
  }

  private void weights(double x, double y, double[] into, int at) {
    double first = at(weightA, x, y);
    double second = at(weightB, x, y);
    into[at + 3] = 0;
    if (fourth >= 0) {
      into[at + fourth] = 0;
    }
    into[at + a] = first;
    into[at + b] = second;
    into[at + c] = 1 - first - second;
  }

  // The ends of the range of t in which no weight is below 0.
  private double lowest(double[] weights, int at) {
    double low = 0;
    for (int i = 0; i < SLOTS; i++) {
      if (change[i] > 0) {
        low = Math.max(low, -weights[at + i] / change[i]);
      }
    }
    return low;
  }

  private double highest(double[] weights, int at) {
    if (fourth < 0) {
      return 0;
    }
    // The changes add up to 0 and that of the fourth is 1, so that one at least is below 0.
    double high = Double.POSITIVE_INFINITY;
    for (int i = 0; i < SLOTS; i++) {
      if (change[i] < 0) {
        high = Math.min(high, -weights[at + i] / change[i]);
      }
    }
    return high;
  }

  // Whether the weights that t can't change are all at least 0.
  private boolean rest(double[] weights, int at) {
    for (int i = 0; i < SLOTS; i++) {
      if (change[i] == 0 && weights[at + i] < -ROUNDING) {
        return false;
      }
    }
    return true;
  }

  private double leastOfGreatest(double low, double high, double[] weights, int at) {
    double best = low;
    double least = greatest(low, weights, at);
    double value = greatest(high, weights, at);
    if (value < least * (1 - TIE)) {
      best = high;
      least = value;
    }
    for (int i = 1; i < SLOTS; i++) {
      for (int j = 0; j < i; j++) {
        // Parallel pieces meet nowhere: t is then infinite or not a number, and passed over.
        double t =
            (weights[at + i] * inverseSum[i] - weights[at + j] * inverseSum[j])
                / (slope[j] - slope[i]);
        if (t > low && t < high) {
          value = greatest(t, weights, at);
          if (value < least * (1 - TIE) || (value <= least * (1 + TIE) && t < best)) {
            best = t;
            least = Math.min(least, value);
          }
        }
      }
    }
    return best;
  }

  private double greatest(double t, double[] weights, int at) {
    return Math.max(
        Math.max(
            weights[at] * inverseSum[0] + t * slope[0],
            weights[at + 1] * inverseSum[1] + t * slope[1]),
        Math.max(
            weights[at + 2] * inverseSum[2] + t * slope[2],
            weights[at + 3] * inverseSum[3] + t * slope[3]));
  }

  // The emitter without which the triangle of the others is the largest: its weights are then
  // between -1 and 1 inside the gamut, and rounding stays small.
  private static int leftOut(int emitters, double[] x, double[] y) {
    int best = 3;
    double largest = Math.abs(span(x, y, 0, 1, 2));
    for (int out = 0; out < 3 && emitters == SLOTS; out++) {
      double span = Math.abs(span(x, y, out == 0 ? 1 : 0, out <= 1 ? 2 : 1, 3));
      if (span > largest) {
        largest = span;
        best = out;
      }
    }
    return best;
  }

  private static double span(double[] x, double[] y, int i, int j, int k) {
    return (x[j] - x[i]) * (y[k] - y[i]) - (x[k] - x[i]) * (y[j] - y[i]);
  }

  // The weight that is 1 at the corner opposite to the side from i to j, and 0 on that side.
  private static double[] weight(double[] x, double[] y, int i, int j, double span) {
    return new double[] {
      (x[i] * y[j] - x[j] * y[i]) / span, (y[i] - y[j]) / span, (x[j] - x[i]) / span
    };
  }

  private static double at(double[] affine, double x, double y) {
    return affine[0] + affine[1] * x + affine[2] * y;
  }

  private static double settle(double value) {
    return Math.abs(value) < 1e-12 ? 0 : value;
  }

  private static String points(int emitters, double[] x, double[] y) {
    StringBuilder text = new StringBuilder();
    for (EmitterKind kind : EmitterKind.values()) {
      int i = kind.slot();
      if (i < emitters) {
        text.append(i == 0 ? "" : " ")
            .append(kind.key())
            .append(" (")
            .append(Checks.plain(x[i]))
            .append(", ")
            .append(Checks.plain(y[i]))
            .append(')');
      }
    }
    return text.toString();
  }
}
