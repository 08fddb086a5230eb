package lampwright.engine.scene;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.Optional;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.pattern.Steady;
import lampwright.engine.pattern.Times;

/**
 * A pattern placed on a track. It covers the instants from its start to before its end.
 *
 * @param startMs 0 to a day
 * @param lengthMs 1 ms to a day
 * @param fadeInMs 0 to a day
 * @param fadeOutMs 0 to a day
 * @param blend how it meets the light under it
 * @param pattern what it shows
 */
public record Cue(
    BigDecimal startMs,
    BigDecimal lengthMs,
    BigDecimal fadeInMs,
    BigDecimal fadeOutMs,
    Blend blend,
    Pattern pattern) {
  public static final Field<Cue, BigDecimal> START_MS =
      Field.usual("startMs", Times.MS, Cue::startMs, BigDecimal.ZERO).alwaysWritten();
  public static final Field<Cue, BigDecimal> LENGTH_MS =
      Field.required(
          "lengthMs",
          new DecimalType(Unit.MILLISECONDS, 1, Times.MAX_MS),
          Cue::lengthMs,
          BigDecimal.ONE);
  public static final Field<Cue, BigDecimal> FADE_IN_MS =
      Field.usual("fadeInMs", Times.MS, Cue::fadeInMs, BigDecimal.ZERO);
  public static final Field<Cue, BigDecimal> FADE_OUT_MS =
      Field.usual("fadeOutMs", Times.MS, Cue::fadeOutMs, BigDecimal.ZERO);
  public static final Field<Cue, Blend> BLEND =
      Field.usual(
          "blend", ChoiceType.of("blend", Blend.class, Blend::key), Cue::blend, Blend.COVER);
  public static final Field<Cue, Pattern> PATTERN =
      Field.required("pattern", Patterns.ANY, Cue::pattern, new Steady(Look.DEFAULT));

  public static final Shape<Cue> SHAPE =
      Shape.of("cue", Cue.class, START_MS, LENGTH_MS, FADE_IN_MS, FADE_OUT_MS, BLEND, PATTERN);

  public Cue {
    startMs = canonical(startMs);
    lengthMs = canonical(lengthMs);
    fadeInMs = canonical(fadeInMs);
    fadeOutMs = canonical(fadeOutMs);
    SHAPE.check(startMs, lengthMs, fadeInMs, fadeOutMs, blend, pattern).done();
  }

  /** A cue without fades that covers what is under it. */
  public static Cue of(long startMs, long lengthMs, Pattern pattern) {
    return new Cue(
        BigDecimal.valueOf(startMs),
        BigDecimal.valueOf(lengthMs),
        BigDecimal.ZERO,
        BigDecimal.ZERO,
        Blend.COVER,
        pattern);
  }

  // What represents one that is broken.
  static Cue standIn(Optional<Cue> before) {
    return of(0, 1, new Steady(Look.DEFAULT));
  }

  /** The first instant that it no longer covers. */
  public BigDecimal endMs() {
    return startMs.add(lengthMs);
  }
}
