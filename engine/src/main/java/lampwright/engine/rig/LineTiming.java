package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import lampwright.engine.check.Checks;
import lampwright.engine.field.Draft;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.PairType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

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

  private static final PairType TIME =
      new PairType(Unit.NANOSECONDS, LineTime.MIN_NS, LineTime.MAX_NS, true);

  private static final Field<LineTiming, List<Double>> T0H = time("t0hNs", LineTiming::t0h, 300);
  private static final Field<LineTiming, List<Double>> T0L = time("t0lNs", LineTiming::t0l, 900);
  private static final Field<LineTiming, List<Double>> T1H = time("t1hNs", LineTiming::t1h, 600);
  private static final Field<LineTiming, List<Double>> T1L = time("t1lNs", LineTiming::t1l, 600);

  /** How far a time may be off. */
  public static final NumberType TOLERANCE_NS =
      new NumberType(Unit.NANOSECONDS, 0, LineTime.MAX_NS);

  private static final Field<LineTiming, Double> TOLERANCE =
      Field.<LineTiming, Double>usual(
              "toleranceNs",
              TOLERANCE_NS,
              line -> line.toleranceNs().orElse(DEFAULT_TOLERANCE_NS),
              DEFAULT_TOLERANCE_NS)
          .writtenIf(line -> line.toleranceNs().isPresent());
  private static final Field<LineTiming, Optional<List<Double>>> BIT =
      Field.optional(
          "bitNs",
          OptionalType.of(new PairType(Unit.NANOSECONDS, LineTime.MIN_NS, LineTime.MAX_NS, false)),
          line -> line.bit().map(LineTime::stated));
  public static final Field<LineTiming, Double> RESET =
      Field.usual(
              "resetUs", new NumberType(Unit.MICROSECONDS, 1, 1_000_000), LineTiming::resetUs, 80.0)
          .alwaysWritten();

  /** The times of a line; written in full, since they belong together. */
  public static final Shape<LineTiming> SHAPE =
      Shape.custom(
          "line", LineTiming.class, LineTiming::make, T0H, T0L, T1H, T1L, TOLERANCE, BIT, RESET);

  /** Of a type that states none; the times of the SK6812 RGBW datasheet, not read again. */
  public static final LineTiming DEFAULT = SHAPE.draft().make();

  public LineTiming {
    Checks checks = Checks.of("line");
    t0h.check("t0hNs", checks);
    t0l.check("t0lNs", checks);
    t1h.check("t1hNs", checks);
    t1l.check("t1lNs", checks);
    List<Double> tolerances = tolerances(Stream.of(t0h, t0l, t1h, t1l));
    tolerances.stream().limit(1).forEach(t -> TOLERANCE_NS.check("toleranceNs", t, checks));
    checks.that(
        tolerances.size() < 2,
        "toleranceNs",
        tolerances.size() + " tolerances",
        "must be the same for all times given with a tolerance");
    bit.ifPresent(b -> b.check("bitNs", checks));
    RESET.type().check(RESET.name(), resetUs, checks);
    checks.done();
  }

  private static Field<LineTiming, List<Double>> time(
      String name, Function<LineTiming, LineTime> get, double usualNs) {
    return Field.usual(name, TIME, (LineTiming line) -> get.apply(line).stated(), List.of(usualNs))
        .alwaysWritten();
  }

  private static LineTiming make(Draft<LineTiming> draft) {
    double tolerance = draft.get(TOLERANCE);
    // Where every time is a range it is for none of them, but has to be a tolerance all the same.
    Checks checks = Checks.of("line");
    TOLERANCE.type().check(TOLERANCE.name(), tolerance, checks);
    checks.done();
    return new LineTiming(
        LineTime.of(draft.get(T0H), tolerance),
        LineTime.of(draft.get(T0L), tolerance),
        LineTime.of(draft.get(T1H), tolerance),
        LineTime.of(draft.get(T1L), tolerance),
        draft.get(BIT).map(range -> new LineTime.Range(range.get(0), range.get(1))),
        draft.get(RESET));
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
