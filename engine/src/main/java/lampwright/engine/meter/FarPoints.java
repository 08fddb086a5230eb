package lampwright.engine.meter;

import java.util.Arrays;
import lampwright.engine.facts.TradeNumbers;

/**
 * Points of the CIE 1976 u'v' diagram, asked whether another lies farther than 0.2 from any of
 * them. The farthest point of many is a corner of their convex hull, so that no others are kept.
 */
final class FarPoints {
  private static final double FAR = TradeNumbers.number("flash caution", "least change of colour");
  private static final double ROUNDING = 1e-9;
  private static final double FAR_SQUARED = (FAR + ROUNDING) * (FAR + ROUNDING);

  /**
   * So many points are kept before all but their hull are dropped; changes the time taken alone.
   */
  private static final int FEW = 48;

  // u' and v' by turns.
  private double[] point = {};
  private int count;
  private int tidyAt = FEW;
  private double leastU;
  private double mostU;
  private double leastV;
  private double mostV;

  void clear() {
    count = 0;
    tidyAt = FEW;
  }

  void add(double u, double v) {
    // Light stays, or comes back to where it was.
    for (int i = count - 1; i >= Math.max(0, count - 3); i--) {
      if (point[2 * i] == u && point[2 * i + 1] == v) {
        return;
      }
    }
    if (count == tidyAt) {
      tidy();
    }
    if (2 * count == point.length) {
      point = Arrays.copyOf(point, Math.max(4, 4 * count));
    }
    point[2 * count] = u;
    point[2 * count + 1] = v;
    leastU = count == 0 ? u : Math.min(leastU, u);
    mostU = count == 0 ? u : Math.max(mostU, u);
    leastV = count == 0 ? v : Math.min(leastV, v);
    mostV = count == 0 ? v : Math.max(mostV, v);
    count++;
  }

  /** Whether a point lies farther than 0.2 from any of them. */
  boolean reach(double u, double v) {
    if (count == 0) {
      return false;
    }
    double du = Math.max(u - leastU, mostU - u);
    double dv = Math.max(v - leastV, mostV - v);
    if (du * du + dv * dv <= FAR_SQUARED) {
      return false;
    }
    for (int i = 0; i < count; i++) {
      double pu = point[2 * i] - u;
      double pv = point[2 * i + 1] - v;
      if (pu * pu + pv * pv > FAR_SQUARED) {
        return true;
      }
    }
    return false;
  }

  int size() {
    return count;
  }

  // Andrew's monotone chain: points sorted, then the lower and the upper border.
  private void tidy() {
    double[][] sorted = new double[count][];
    for (int i = 0; i < count; i++) {
      sorted[i] = new double[] {point[2 * i], point[2 * i + 1]};
    }
    Arrays.sort(sorted, Arrays::compare);
    double[][] hull = new double[2 * count][];
    int size = 0;
    for (int i = 0; i < count; i++) {
      size = push(hull, size, 0, sorted[i]);
    }
    int lower = size - 1;
    for (int i = count - 2; i >= 0; i--) {
      size = push(hull, size, lower, sorted[i]);
    }
    // The last is the first again.
    count = size - 1;
    for (int i = 0; i < count; i++) {
      point[2 * i] = hull[i][0];
      point[2 * i + 1] = hull[i][1];
    }
    tidyAt = Math.max(FEW, 2 * count);
  }

  private static int push(double[][] hull, int size, int from, double[] next) {
    int left = size;
    while (left >= from + 2 && turn(hull[left - 2], hull[left - 1], next) <= 0) {
      left--;
    }
    hull[left] = next;
    return left + 1;
  }

  private static double turn(double[] a, double[] b, double[] c) {
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  }
}
