package lampwright.engine.scene;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import lampwright.engine.check.Checks;
import lampwright.engine.pattern.Pattern;
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
  public Cue {
    startMs = canonical(startMs);
    lengthMs = canonical(lengthMs);
    fadeInMs = canonical(fadeInMs);
    fadeOutMs = canonical(fadeOutMs);
    Checks.of("cue")
        .range("startMs", startMs, 0, Times.MAX_MS)
        .range("lengthMs", lengthMs, 1, Times.MAX_MS)
        .range("fadeInMs", fadeInMs, 0, Times.MAX_MS)
        .range("fadeOutMs", fadeOutMs, 0, Times.MAX_MS)
        .done();
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

  /** The first instant that it no longer covers. */
  public BigDecimal endMs() {
    return startMs.add(lengthMs);
  }

  public Cue withStartMs(BigDecimal newStartMs) {
    return new Cue(newStartMs, lengthMs, fadeInMs, fadeOutMs, blend, pattern);
  }

  public Cue withLengthMs(BigDecimal newLengthMs) {
    return new Cue(startMs, newLengthMs, fadeInMs, fadeOutMs, blend, pattern);
  }

  public Cue withFadeInMs(BigDecimal newFadeInMs) {
    return new Cue(startMs, lengthMs, newFadeInMs, fadeOutMs, blend, pattern);
  }

  public Cue withFadeOutMs(BigDecimal newFadeOutMs) {
    return new Cue(startMs, lengthMs, fadeInMs, newFadeOutMs, blend, pattern);
  }

  public Cue withBlend(Blend newBlend) {
    return new Cue(startMs, lengthMs, fadeInMs, fadeOutMs, newBlend, pattern);
  }

  public Cue withPattern(Pattern newPattern) {
    return new Cue(startMs, lengthMs, fadeInMs, fadeOutMs, blend, newPattern);
  }
}
