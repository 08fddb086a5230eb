package lampwright.engine.second;

import java.util.List;

/** What a pixel can mix, and the drives of least current. Slots: red, green, blue, white. */
final class Gamut {
  private static final int NONE = -1;

  private final int emitters;
  private final Emitter[] emitter;
  private final double[] inv = new double[4];
  private final double[] change = new double[4];
  private final double[] slope = new double[4];
  private final int free;
  private final int a;
  private final int b;
  private final int c;
  private final double span;
  private final boolean upperEnd;

  Gamut(List<Emitter> list) {
    emitters = list.size();
    emitter = list.toArray(new Emitter[0]);
    for (int i = 0; i < emitters; i++) {
      inv[i] = y(i) / emitter[i].mcd();
    }
    free = emitters == 3 ? NONE : freeEmitter();
    int[] others = others(free);
    a = others[0];
    b = others[1];
    c = others[2];
    span = span(a, b, c);
    if (free != NONE) {
      change[free] = 1;
      change[a] = -zero(weightA(emitter[free].at()));
      change[b] = -zero(weightB(emitter[free].at()));
      change[c] = -zero(1 + change[a] + change[b]);
      for (int i = 0; i < 4; i++) {
        slope[i] = change[i] * inv[i];
      }
    }
    upperEnd = free != NONE && drawsLeastAtUpperEnd();
  }

  boolean hasWhite() {
    return emitters == 4;
  }

  private double x(int i) {
    return emitter[i].at().x();
  }

  private double y(int i) {
    return emitter[i].at().y();
  }

  private double span(int i, int j, int k) {
    return (x(j) - x(i)) * (y(k) - y(i)) - (x(k) - x(i)) * (y(j) - y(i));
  }

  private int freeEmitter() {
    int best = 3;
    double greatest = Math.abs(span(0, 1, 2));
    for (int f = 0; f < 3; f++) {
      int[] o = others(f);
      double other = Math.abs(span(o[0], o[1], o[2]));
      if (other > greatest) {
        greatest = other;
        best = f;
      }
    }
    return best;
  }

  private static int[] others(int f) {
    return switch (f) {
      case 0 -> new int[] {1, 2, 3};
      case 1 -> new int[] {0, 2, 3};
      case 2 -> new int[] {0, 1, 3};
      default -> new int[] {0, 1, 2};
    };
  }

  private double weightA(Chromaticity at) {
    return (x(b) * y(c) - x(c) * y(b)) / span
        + ((y(b) - y(c)) / span) * at.x()
        + ((x(c) - x(b)) / span) * at.y();
  }

  private double weightB(Chromaticity at) {
    return (x(c) * y(a) - x(a) * y(c)) / span
        + ((y(c) - y(a)) / span) * at.x()
        + ((x(a) - x(c)) / span) * at.y();
  }

  private static double zero(double v) {
    return Math.abs(v) < 1e-12 ? 0 : v;
  }

  private boolean drawsLeastAtUpperEnd() {
    double current = 0;
    for (int i = 0; i < 4; i++) {
      current = current + slope[i] * emitter[i].milliamps();
    }
    if (slope[3] == 0) {
      return current < 0;
    }
    boolean mostWhite = current / slope[3] <= 1e-9;
    return (slope[3] > 0) == mostWhite;
  }

  /** The point itself, or the nearest that the pixel can mix, with its weights. */
  Point point(Chromaticity wanted) {
    Point at = new Point(wanted);
    return at.inside() ? at : new Point(nearest(wanted));
  }

  private Chromaticity nearest(Chromaticity wanted) {
    double least = Double.POSITIVE_INFINITY;
    Chromaticity found = wanted;
    for (int i = 0; i < emitters; i++) {
      for (int j = i + 1; j < emitters; j++) {
        if (!isSide(i, j)) {
          continue;
        }
        double ui = emitter[i].at().u();
        double vi = emitter[i].at().v();
        double du = emitter[j].at().u() - ui;
        double dv = emitter[j].at().v() - vi;
        double along = ((wanted.u() - ui) * du + (wanted.v() - vi) * dv) / (du * du + dv * dv);
        double p = Math.min(1, Math.max(0, along));
        double pu = ui + p * du;
        double pv = vi + p * dv;
        double square =
            (wanted.u() - pu) * (wanted.u() - pu) + (wanted.v() - pv) * (wanted.v() - pv);
        if (square < least) {
          least = square;
          found = Chromaticity.ofUv(pu, pv);
        }
      }
    }
    return found;
  }

  private boolean isSide(int i, int j) {
    double ui = emitter[i].at().u();
    double vi = emitter[i].at().v();
    double du = emitter[j].at().u() - ui;
    double dv = emitter[j].at().v() - vi;
    if (du == 0 && dv == 0) {
      return false;
    }
    boolean noneBelow = true;
    boolean noneAbove = true;
    for (int k = 0; k < emitters; k++) {
      double turn = du * (emitter[k].at().v() - vi) - (emitter[k].at().u() - ui) * dv;
      noneBelow &= turn >= -1e-12;
      noneAbove &= turn <= 1e-12;
    }
    return noneBelow || noneAbove;
  }

  /** Drives at an amount of light L of a matched colour whose numbers at full light are u. */
  double[] drives(double[] u, double light) {
    double[] drives = new double[4];
    double low = Double.NEGATIVE_INFINITY;
    double high = Double.POSITIVE_INFINITY;
    for (int i = 0; i < 4; i++) {
      drives[i] = light * u[i];
      if (slope[i] > 0) {
        low = Math.max(low, -drives[i] / slope[i]);
        high = Math.min(high, (1 - drives[i]) / slope[i]);
      } else if (slope[i] < 0) {
        low = Math.max(low, (1 - drives[i]) / slope[i]);
        high = Math.min(high, -drives[i] / slope[i]);
      }
    }
    double t = 0;
    if (free != NONE) {
      double end = upperEnd ? high : low;
      t = low > high ? (low + high) / 2 : end;
    }
    for (int i = 0; i < 4; i++) {
      double drive = drives[i] + t * slope[i];
      drives[i] = drive < 1e-12 ? 0 : drive > 1 - 1e-12 ? 1 : drive;
    }
    return drives;
  }

  /** A chromaticity with its weights w + t * change, t from low to high. */
  final class Point {
    private final Chromaticity at;
    private final double[] w = new double[4];
    private final double low;
    private final double high;

    private Point(Chromaticity at) {
      this.at = at;
      w[a] = weightA(at);
      w[b] = weightB(at);
      w[c] = 1 - w[a] - w[b];
      double least = free == NONE ? 0 : Double.POSITIVE_INFINITY;
      double greatest = 0;
      for (int i = 0; i < 4; i++) {
        if (change[i] > 0) {
          greatest = Math.max(greatest, -w[i] / change[i]);
        } else if (change[i] < 0) {
          least = Math.min(least, -w[i] / change[i]);
        }
      }
      low = greatest;
      high = least;
    }

    Chromaticity chromaticity() {
      return at;
    }

    private boolean inside() {
      for (int i = 0; i < 4; i++) {
        if (change[i] == 0 && w[i] < -1e-9) {
          return false;
        }
      }
      return low <= high + 1e-9;
    }

    private double greatest(double t) {
      double m = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < 4; i++) {
        m = Math.max(m, w[i] * inv[i] + t * slope[i]);
      }
      return m;
    }

    private double brightestPlace() {
      if (free == NONE) {
        return 0;
      }
      double from = low > high ? (low + high) / 2 : low;
      double to = low > high ? from : high;
      double t = from;
      double m = greatest(from);
      if (greatest(to) < m * (1 - 1e-13)) {
        t = to;
        m = greatest(to);
      }
      for (int i = 1; i <= 3; i++) {
        for (int j = 0; j < i; j++) {
          double tried = (w[i] * inv[i] - w[j] * inv[j]) / (slope[j] - slope[i]);
          if (slope[j] == slope[i] || !(tried > from && tried < to)) {
            continue;
          }
          double value = greatest(tried);
          if (value < m * (1 - 1e-13) || (value <= m * (1 + 1e-13) && tried < t)) {
            t = tried;
            m = Math.min(m, value);
          }
        }
      }
      return t;
    }

    /** G: the greatest luminance, mcd. */
    double greatestLuminance() {
      double t = brightestPlace();
      double greatest = 0;
      for (int i = 0; i < 4; i++) {
        greatest = Math.max(greatest, (w[i] + t * change[i]) * inv[i]);
      }
      return at.y() / greatest;
    }

    /** u at full light, of a luminance F in mcd. */
    double[] atLuminance(double luminance) {
      double[] u = new double[4];
      for (int i = 0; i < 4; i++) {
        double v = w[i] * (luminance / at.y()) * inv[i];
        u[i] = Math.abs(v - 1) < 1e-12 ? 1 : v;
      }
      return u;
    }
  }
}
