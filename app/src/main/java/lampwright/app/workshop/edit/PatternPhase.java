package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Fill;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.pattern.LightCharacter;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;

/**
 * The phase of patterns that repeat, and the time in which they do. Chase and test walk repeat in a
 * time that rests on their lamps' pixels, which a pattern does not know.
 */
public final class PatternPhase {
  private static final BigDecimal MINUTE_MS = BigDecimal.valueOf(60_000);
  // More digits than any time in a scene needs.
  private static final MathContext DIGITS = new MathContext(15);

  private PatternPhase() {}

  /** The period in ms; none if the pattern does not repeat in a time of its own. */
  public static Optional<BigDecimal> periodMs(Pattern pattern) {
    if (pattern instanceof Flash p) {
      BigDecimal group = p.onMs().add(p.offMs()).multiply(BigDecimal.valueOf(p.flashes()));
      return positive(group.add(p.gapMs()));
    }
    if (pattern instanceof Indicator p) {
      return Optional.of(MINUTE_MS.divide(p.perMinute(), DIGITS));
    }
    if (pattern instanceof RotatingBeacon p) {
      return Optional.of(MINUTE_MS.divide(p.perMinute(), DIGITS));
    }
    if (pattern instanceof Fill p) {
      return positive(p.overMs().add(p.holdMs()).add(p.offMs()));
    }
    if (pattern instanceof ColourCycle p) {
      return positive(p.periodMs());
    }
    if (pattern instanceof Keyframes p && p.repeat()) {
      return positive(p.frames().get(p.frames().size() - 1).atMs());
    }
    if (pattern instanceof LightCharacter p) {
      return Optional.of(
          BigDecimal.valueOf(
              lampwright.engine.pattern.Rhythm.of(p.character(), p.unitMs())
                  .periodMs()
                  .doubleValue()));
    }
    return Optional.empty();
  }

  /** The phase; none if the pattern has no {@link #periodMs}. */
  public static Optional<BigDecimal> phase(Pattern pattern) {
    return periodMs(pattern).flatMap(period -> phaseOf(pattern));
  }

  /** The same pattern at another phase; itself if it has none. */
  public static Pattern withPhase(Pattern pattern, BigDecimal phase) {
    if (pattern instanceof Flash p) {
      return new Flash(p.look(), phase, p.onMs(), p.offMs(), p.flashes(), p.gapMs());
    }
    if (pattern instanceof Indicator p) {
      return new Indicator(p.look(), phase, p.perMinute(), p.onShare());
    }
    if (pattern instanceof RotatingBeacon p) {
      return new RotatingBeacon(
          p.look(), phase, p.perMinute(), p.beamDegrees(), p.clockwise(), p.angles());
    }
    if (pattern instanceof Fill p) {
      return new Fill(p.look(), phase, p.overMs(), p.holdMs(), p.offMs());
    }
    if (pattern instanceof ColourCycle p) {
      return new ColourCycle(
          p.look(), phase, p.periodMs(), p.spread(), p.saturation(), p.backwards());
    }
    if (pattern instanceof Keyframes p) {
      return new Keyframes(p.look(), phase, p.frames(), p.repeat());
    }
    if (pattern instanceof LightCharacter p) {
      return new LightCharacter(p.look(), phase, p.character(), p.unitMs());
    }
    return pattern;
  }

  /** The pattern as it would go on after some time, where its phase can say so. */
  public static Pattern later(Pattern pattern, BigDecimal byMs) {
    Optional<BigDecimal> period = periodMs(pattern);
    Optional<BigDecimal> phase = phase(pattern);
    if (period.isEmpty() || phase.isEmpty()) {
      return pattern;
    }
    BigDecimal shifted = phase.get().add(byMs.divide(period.get(), DIGITS));
    return withPhase(pattern, shifted.remainder(BigDecimal.ONE));
  }

  private static Optional<BigDecimal> phaseOf(Pattern pattern) {
    if (pattern instanceof Flash p) {
      return Optional.of(p.phase());
    }
    if (pattern instanceof Indicator p) {
      return Optional.of(p.phase());
    }
    if (pattern instanceof RotatingBeacon p) {
      return Optional.of(p.phase());
    }
    if (pattern instanceof Fill p) {
      return Optional.of(p.phase());
    }
    if (pattern instanceof ColourCycle p) {
      return Optional.of(p.phase());
    }
    if (pattern instanceof Keyframes p) {
      return Optional.of(p.phase());
    }
    if (pattern instanceof LightCharacter p) {
      return Optional.of(p.phase());
    }
    return Optional.empty();
  }

  private static Optional<BigDecimal> positive(BigDecimal ms) {
    return ms.signum() > 0 ? Optional.of(ms) : Optional.empty();
  }
}
