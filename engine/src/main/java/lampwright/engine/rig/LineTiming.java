package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.engine.check.Checks;

/**
 * The times of a pixel's data line.
 *
 * @param t0h high time of a 0 bit
 * @param t0l low time of a 0 bit
 * @param t1h high time of a 1 bit
 * @param t1l low time of a 1 bit; those of the four that are stated by a tolerance have the same
 * @param bit high and low time of a bit together, where the part limits that too
 * @param resetUs least low time that makes the pixels show what they took, 1 to 1,000,000 us
 */
public record LineTiming(
    LineTime t0h,
    LineTime t0l,
    LineTime t1h,
    LineTime t1l,
    Optional<LineTime.Range> bit,
    double resetUs) {
  public static final double DEFAULT_TOLERANCE_NS = 150;

  /** Of a type that states none; the times of the SK6812 RGBW datasheet, from memory. */
  public static final LineTiming DEFAULT = ofNominal(300, 900, 600, 600, DEFAULT_TOLERANCE_NS, 80);

  public LineTiming {
    Checks checks = Checks.of("line");
    t0h.check("t0hNs", checks);
    t0l.check("t0lNs", checks);
    t1h.check("t1hNs", checks);
    t1l.check("t1lNs", checks);
    List<Double> tolerances = tolerances(Stream.of(t0h, t0l, t1h, t1l));
    tolerances.stream().limit(1).forEach(t -> checks.range("toleranceNs", t, 0, LineTime.MAX_NS));
    checks.that(
        tolerances.size() < 2,
        "toleranceNs",
        tolerances.size() + " tolerances",
        "needs one for all times that are stated by a tolerance");
    bit.ifPresent(b -> b.check("bitNs", checks));
    checks.range("resetUs", resetUs, 1, 1_000_000).done();
  }

  /** Times that may all be off by the same, ns, and the reset, us. */
  public static LineTiming ofNominal(
      double t0hNs, double t0lNs, double t1hNs, double t1lNs, double toleranceNs, double resetUs) {
    return new LineTiming(
        new LineTime.Nominal(t0hNs, toleranceNs),
        new LineTime.Nominal(t0lNs, toleranceNs),
        new LineTime.Nominal(t1hNs, toleranceNs),
        new LineTime.Nominal(t1lNs, toleranceNs),
        Optional.empty(),
        resetUs);
  }

  /** High and low times of a 0 and a 1, in this order. */
  public List<LineTime> times() {
    return List.of(t0h, t0l, t1h, t1l);
  }

  /** How far the times may be off that are stated by a tolerance; empty if none is. */
  public Optional<Double> toleranceNs() {
    return tolerances(times().stream()).stream().findFirst();
  }

  /**
   * A bit as it is meant to be. The low time is what was stated for it, or, of a range, what the
   * high time leaves of the middle of {@link #bit()}: a low time may have the range from 300 ns to
   * 100 us (WS2813), whose middle nobody means.
   *
   * @param one which bit
   */
  public BitTimes nominal(boolean one) {
    double highNs = (one ? t1h : t0h).nominalNs();
    LineTime low = one ? t1l : t0l;
    if (bit.isEmpty() || !(low instanceof LineTime.Range)) {
      return new BitTimes(highNs, low.nominalNs());
    }
    double rest = bit.get().nominalNs() - highNs;
    return new BitTimes(highNs, Math.max(low.leastNs(), Math.min(low.greatestNs(), rest)));
  }

  private static List<Double> tolerances(Stream<LineTime> times) {
    return times
        .filter(LineTime.Nominal.class::isInstance)
        .map(t -> ((LineTime.Nominal) t).toleranceNs())
        .distinct()
        .toList();
  }
}
