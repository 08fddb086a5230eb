package lampwright.engine.meter;

import lampwright.engine.check.Checks;

/**
 * A run of pixels along a pair of wires, each drawing a current of its own whatever its voltage.
 *
 * <pre>
 *   supply --feed--+--between--+--between--+--far feed-- supply
 *                  1           2           3
 * </pre>
 *
 * <p>Every resistance is that of both conductors, plus and minus, since the current of a pixel
 * comes by one and goes by the other.
 */
public final class Ladder {
  /** More than any wire has: keeps sums finite. */
  private static final double MOST_OHMS = 1e9;

  private final double supplyVolts;
  private final double feedOhms;
  private final double betweenOhms;
  private final double farFeedOhms;
  private final boolean bothEnds;

  private Ladder(
      double supplyVolts, double feedOhms, double betweenOhms, double farFeedOhms, boolean both) {
    Checks.require("supply volts", supplyVolts, 0, 1000);
    Checks.require("feed ohms", feedOhms, 0, MOST_OHMS);
    Checks.require("ohms between pixels", betweenOhms, 0, MOST_OHMS);
    Checks.require("far feed ohms", farFeedOhms, 0, MOST_OHMS);
    this.supplyVolts = supplyVolts;
    this.feedOhms = feedOhms;
    this.betweenOhms = betweenOhms;
    this.farFeedOhms = farFeedOhms;
    this.bothEnds = both;
  }

  /**
   * A run fed before its first pixel.
   *
   * @param supplyVolts 0 to 1,000
   * @param feedOhms of both conductors from the supply to the first pixel, at least 0
   * @param betweenOhms of both conductors from one pixel to the next, at least 0
   */
  public static Ladder fedAtOneEnd(double supplyVolts, double feedOhms, double betweenOhms) {
    return new Ladder(supplyVolts, feedOhms, betweenOhms, 0, false);
  }

  /**
   * A run fed before its first pixel and behind its last, from one supply.
   *
   * @param farFeedOhms of both conductors from the supply to the last pixel, at least 0
   */
  public static Ladder fedAtBothEnds(
      double supplyVolts, double feedOhms, double betweenOhms, double farFeedOhms) {
    return new Ladder(supplyVolts, feedOhms, betweenOhms, farFeedOhms, true);
  }

  /**
   * Solves the run by Kirchhoff's laws.
   *
   * @param amps what each pixel draws, from the first; one at least, each 0 to 1,000 A
   * @param volts gets the voltage across each pixel; below 0 where the wires can't carry such a
   *     current at all
   * @return the current from the supply at the first pixel's end, A; what else the pixels draw
   *     comes from the other end
   */
  public double solve(double[] amps, double[] volts) {
    if (amps.length == 0 || volts.length != amps.length) {
      throw new IllegalArgumentException(
          "pixel currents: "
              + amps.length
              + " for "
              + volts.length
              + " voltages: must have as many, and at least one");
    }
    double total = 0;
    for (double drawn : amps) {
      Checks.require("pixel amps", drawn, 0, 1000);
      total += drawn;
    }
    double near = bothEnds ? nearAmps(amps, total) : total;
    double passing = near;
    double here = supplyVolts - feedOhms * near;
    for (int i = 0; i < amps.length; i++) {
      volts[i] = here;
      passing -= amps[i];
      here -= betweenOhms * passing;
    }
    return near;
  }

  // The drop on the way round from one end of the supply to the other must be 0.
  private double nearAmps(double[] amps, double total) {
    double around = feedOhms + farFeedOhms + betweenOhms * (amps.length - 1);
    if (around == 0) {
      return total / 2;
    }
    double drawnBefore = 0;
    double sum = 0;
    for (int i = 0; i + 1 < amps.length; i++) {
      drawnBefore += amps[i];
      sum += drawnBefore;
    }
    return (farFeedOhms * total + betweenOhms * sum) / around;
  }
}
