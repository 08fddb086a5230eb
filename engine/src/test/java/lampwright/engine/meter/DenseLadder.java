package lampwright.engine.meter;

/**
 * A second, slow ladder for tests, by node voltages: one equation a pixel, solved by Gauss
 * elimination. Nothing of it is shared with the meter.
 */
final class DenseLadder {
  private DenseLadder() {}

  /**
   * The voltage at each pixel, all resistances being those of both conductors together.
   *
   * @param farOhms below 0 where the chain is not fed there
   */
  static double[] volts(
      double supply, double nearOhms, double betweenOhms, double farOhms, double[] amps) {
    int n = amps.length;
    double[][] rows = new double[n][n + 1];
    for (int i = 0; i < n; i++) {
      rows[i][n] = -amps[i];
      if (i > 0) {
        tie(rows[i], i, i - 1, betweenOhms);
      }
      if (i + 1 < n) {
        tie(rows[i], i, i + 1, betweenOhms);
      }
    }
    rows[0][0] += 1 / nearOhms;
    rows[0][n] += supply / nearOhms;
    if (farOhms >= 0) {
      rows[n - 1][n - 1] += 1 / farOhms;
      rows[n - 1][n] += supply / farOhms;
    }
    return solve(rows);
  }

  private static void tie(double[] row, int own, int other, double ohms) {
    row[own] += 1 / ohms;
    row[other] -= 1 / ohms;
  }

  private static double[] solve(double[][] rows) {
    int n = rows.length;
    for (int column = 0; column < n; column++) {
      int pivot = column;
      for (int row = column + 1; row < n; row++) {
        if (Math.abs(rows[row][column]) > Math.abs(rows[pivot][column])) {
          pivot = row;
        }
      }
      double[] swapped = rows[column];
      rows[column] = rows[pivot];
      rows[pivot] = swapped;
      for (int row = 0; row < n; row++) {
        if (row != column) {
          double factor = rows[row][column] / rows[column][column];
          for (int k = column; k <= n; k++) {
            rows[row][k] -= factor * rows[column][k];
          }
        }
      }
    }
    double[] found = new double[n];
    for (int i = 0; i < n; i++) {
      found[i] = rows[i][n] / rows[i][i];
    }
    return found;
  }
}
