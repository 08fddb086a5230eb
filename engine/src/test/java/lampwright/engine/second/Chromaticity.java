package lampwright.engine.second;

/** CIE 1931 x, y, and u', v' of CIE 1976. */
record Chromaticity(double x, double y) {
  double u() {
    return 4 * x / (-2 * x + 12 * y + 3);
  }

  double v() {
    return 9 * y / (-2 * x + 12 * y + 3);
  }

  static Chromaticity ofUv(double u, double v) {
    double k = 6 * u - 16 * v + 12;
    return new Chromaticity(9 * u / k, 4 * v / k);
  }
}
