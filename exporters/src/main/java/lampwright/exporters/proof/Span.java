package lampwright.exporters.proof;

import lampwright.exporters.target.LineLimits;

/** A time of the data line: its limits, and what was seen of it. */
final class Span {
  /** What rounding of times that are no whole ns may add. */
  private static final double SLACK_NS = 0.001;

  private final LineLimits.Range limits;
  private final double nsPerCycle;
  private long seen;
  private long leastCycles;
  private long mostCycles;

  Span(LineLimits.Range limits, double nsPerCycle) {
    this.limits = limits;
    this.nsPerCycle = nsPerCycle;
  }

  /** Takes a time. Returns whether it is inside the limits. */
  boolean take(long cycles) {
    leastCycles = seen == 0 ? cycles : Math.min(leastCycles, cycles);
    mostCycles = Math.max(mostCycles, cycles);
    seen++;
    double ns = cycles * nsPerCycle;
    return ns >= limits.leastNs() - SLACK_NS && ns <= limits.greatestNs() + SLACK_NS;
  }

  LineLimits.Range limits() {
    return limits;
  }

  void report(Figures figures, String place) {
    figures.put(place + "/seen", seen);
    if (seen > 0) {
      figures.put(place + "/minNs", leastCycles * nsPerCycle);
      figures.put(place + "/maxNs", mostCycles * nsPerCycle);
    }
    figures.put(place + "/limitMinNs", limits.leastNs());
    figures.put(place + "/limitMaxNs", limits.greatestNs());
  }

  long leastCycles() {
    return leastCycles;
  }
}
