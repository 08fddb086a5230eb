package lampwright.engine.pattern;

import java.math.BigDecimal;
import java.util.function.Function;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
import lampwright.engine.field.Unit;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/** A repeating time, begun at a share of itself. For one thread. */
final class Period {
  private static final DecimalType PHASE = new DecimalType(Unit.TURNS, -1_000_000, 1_000_000);

  private final Ratio lengthMs;
  private final Ratio shiftMs;
  private final Moment place = new Moment();
  private final Moment left = new Moment();

  /**
   * @param lengthMs above 0
   * @param phase the share of the period at which it starts
   */
  Period(Ratio lengthMs, BigDecimal phase) {
    this.lengthMs = lengthMs.reduced();
    // Whole periods change nothing, so only the place within one counts.
    this.shiftMs = lengthMs.times(Ratio.of(phase)).modulo(lengthMs).reduced();
  }

  /** The period of a pattern that repeats, on certain pixels. */
  static Period of(Pattern pattern, PaintContext context) {
    return new Period(
        pattern.period(context.mixers()).orElseThrow(),
        pattern.startPhase().orElse(BigDecimal.ZERO));
  }

  Ratio lengthMs() {
    return lengthMs;
  }

  /** The period of something that happens so often per minute. */
  static Ratio ofRate(BigDecimal perMinute) {
    return Ratio.of(Times.MINUTE_MS).over(Ratio.of(perMinute));
  }

  /** Place in the period, at least 0 and below its length; changes with the next call. */
  Moment place(Moment tMs) {
    place.setSum(tMs, shiftMs);
    place.modulo(lengthMs);
    return place;
  }

  /**
   * How many frames lie before an end that is later than the place last asked for: that place's own
   * frame is the first of them.
   */
  long framesBefore(Ratio endMs, Ratio frameMs) {
    // What is left is below 0 like this, so that rounding down gives the whole frames above it.
    left.setDifference(place, endMs);
    return -left.floorOver(frameMs);
  }

  /** Place as a share of the period, at least 0 and below 1. */
  double share(Moment tMs) {
    return place(tMs).over(lengthMs);
  }

  /** The phase of a pattern. */
  static <P> Field<P, BigDecimal> phase(Function<P, BigDecimal> get) {
    return Field.usual("phase", PHASE, get, BigDecimal.ZERO);
  }
}
