package lampwright.engine.rig;

/**
 * A bit on a data line.
 *
 * @param highNs how long the line is high, ns
 * @param lowNs how long it is low after that, ns
 */
public record BitTimes(double highNs, double lowNs) {
  /** High and low time together, ns. */
  public double bitNs() {
    return highNs + lowNs;
  }
}
