package lampwright.exporters.target;

/**
 * The times that a controller really sends on a chain's data line.
 *
 * @param t0hNs high time of a 0 bit, ns
 * @param t0lNs low time of a 0 bit, ns
 * @param t1hNs high time of a 1 bit, ns
 * @param t1lNs low time of a 1 bit, ns
 */
public record SentTimes(double t0hNs, double t0lNs, double t1hNs, double t1lNs) {
  /** Length of the longer bit, ns. */
  public double bitNs() {
    return Math.max(t0hNs + t0lNs, t1hNs + t1lNs);
  }

  /** Length of the shorter bit, ns; a driver may send bits of two lengths. */
  public double shorterBitNs() {
    return Math.min(t0hNs + t0lNs, t1hNs + t1lNs);
  }
}
