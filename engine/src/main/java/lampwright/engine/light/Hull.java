package lampwright.engine.light;

/** The border of a gamut in the CIE 1976 u'v' diagram, where straight lines stay straight. */
final class Hull {
  private static final double ROUNDING = 1e-12;

  private int sides;
  // Start of each side, and its way to the end.
  private final double[] u = new double[6];
  private final double[] v = new double[6];
  private final double[] du = new double[6];
  private final double[] dv = new double[6];

  /**
   * The border about a few points.
   *
   * @param x of each point, and {@code y} likewise
   * @param points how many of them count: three or four, not all in a line
   */
  Hull(double[] x, double[] y, int points) {
    double[] up = new double[points];
    double[] vp = new double[points];
    for (int i = 0; i < points; i++) {
      Chromaticity point = new Chromaticity(x[i], y[i]);
      up[i] = point.uPrime();
      vp[i] = point.vPrime();
    }
    for (int i = 0; i < points; i++) {
      for (int j = i + 1; j < points; j++) {
        if (isSide(up, vp, i, j)) {
          u[sides] = up[i];
          v[sides] = vp[i];
          du[sides] = up[j] - up[i];
          dv[sides] = vp[j] - vp[i];
          sides++;
        }
      }
    }
  }

  // A pair is a side if all others lie on one side of it. Where three lie in a line there are sides
  // upon sides, which does no harm.
  private static boolean isSide(double[] u, double[] v, int i, int j) {
    if (u[i] == u[j] && v[i] == v[j]) {
      return false;
    }
    double least = 0;
    double most = 0;
    for (int k = 0; k < u.length; k++) {
      double turn = (u[j] - u[i]) * (v[k] - v[i]) - (u[k] - u[i]) * (v[j] - v[i]);
      least = Math.min(least, turn);
      most = Math.max(most, turn);
    }
    return least >= -ROUNDING || most <= ROUNDING;
  }

  /** Writes x and y of the point of the border nearest in u'v' to {@code into[at .. at + 1]}. */
  void nearest(double x, double y, double[] into, int at) {
    double scale = -2 * x + 12 * y + 3;
    double up = 4 * x / scale;
    double vp = 9 * y / scale;
    double least = Double.POSITIVE_INFINITY;
    double bestU = up;
    double bestV = vp;
    for (int i = 0; i < sides; i++) {
      double along = ((up - u[i]) * du[i] + (vp - v[i]) * dv[i]) / (du[i] * du[i] + dv[i] * dv[i]);
      double place = Math.min(1, Math.max(0, along));
      double pu = u[i] + place * du[i];
      double pv = v[i] + place * dv[i];
      double square = (up - pu) * (up - pu) + (vp - pv) * (vp - pv);
      if (square < least) {
        least = square;
        bestU = pu;
        bestV = pv;
      }
    }
    // CIE 15: the way back from u'v' to x y.
    double back = 6 * bestU - 16 * bestV + 12;
    into[at] = 9 * bestU / back;
    into[at + 1] = 4 * bestV / back;
  }
}
