package lampwright.engine.rig;

import lampwright.engine.light.Checks;

/**
 * The times of a pixel's data line.
 *
 * @param t0hNs high time of a 0 bit, ns
 * @param t0lNs low time of a 0 bit, ns
 * @param t1hNs high time of a 1 bit, ns
 * @param t1lNs low time of a 1 bit, ns
 * @param toleranceNs how far each of these may be off, ns
 * @param resetUs low time that makes the pixels show what they took, us
 */
public record LineTiming(
    double t0hNs, double t0lNs, double t1hNs, double t1lNs, double toleranceNs, double resetUs) {
  /** Of a type that states none; the times of the SK6812 RGBW datasheet, from memory. */
  public static final LineTiming DEFAULT = new LineTiming(300, 900, 600, 600, 150, 80);

  private static final double MAX_NS = 1_000_000;

  public LineTiming {
    Checks.of("line")
        .range("t0hNs", t0hNs, 1, MAX_NS)
        .range("t0lNs", t0lNs, 1, MAX_NS)
        .range("t1hNs", t1hNs, 1, MAX_NS)
        .range("t1lNs", t1lNs, 1, MAX_NS)
        .range("toleranceNs", toleranceNs, 0, MAX_NS)
        .range("resetUs", resetUs, 1, MAX_NS)
        .done();
  }
}
