package lampwright.app.workshop.edit;

import static java.math.RoundingMode.HALF_EVEN;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Checks;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.Mixer;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Fill;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.pattern.LightCharacter;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Rhythm;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.TestWalk;
import lampwright.engine.time.Ratio;

/**
 * The phase of patterns that repeat, and the time in which they do. Chase and test walk repeat in a
 * time that rests on their lamps' pixels, which a pattern does not know.
 */
public final class PatternPhase {
  private static final Ratio MINUTE_MS = Ratio.of(60_000);
  // More digits than a person wants to see; what must be exact uses the ratio.
  private static final int DIGITS = 12;

  private PatternPhase() {}

  /** The period in ms; none if the pattern does not repeat in a time of its own. */
  public static Optional<BigDecimal> periodMs(Pattern pattern) {
    return own(pattern).map(period -> Checks.canonical(period.decimal(DIGITS, HALF_EVEN)));
  }

  /** The exact period in ms on a row of pixels; none if the pattern does not repeat. */
  static Optional<Ratio> period(Pattern pattern, List<Mixer> row) {
    if (pattern instanceof Chase p) {
      int steps = p.bounce() ? Math.max(1, 2 * row.size() - 2) : row.size();
      return Optional.of(Ratio.of(p.stepMs()).times(steps));
    }
    if (pattern instanceof TestWalk p) {
      long emitters =
          row.stream()
              .mapToLong(pixel -> Arrays.stream(EmitterKind.values()).filter(pixel::has).count())
              .sum();
      return Optional.of(Ratio.of(p.stepMs()).times(emitters));
    }
    return own(pattern);
  }

  private static Optional<Ratio> own(Pattern pattern) {
    if (pattern instanceof Flash p) {
      BigDecimal group = p.onMs().add(p.offMs()).multiply(BigDecimal.valueOf(p.flashes()));
      return positive(group.add(p.gapMs()));
    }
    if (pattern instanceof Indicator p) {
      return Optional.of(MINUTE_MS.over(Ratio.of(p.perMinute())));
    }
    if (pattern instanceof RotatingBeacon p) {
      return Optional.of(MINUTE_MS.over(Ratio.of(p.perMinute())));
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
      return Optional.of(Rhythm.of(p.character(), p.unitMs()).periodMs());
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
    if (pattern instanceof Chase p) {
      return new Chase(p.look(), phase, p.stepMs(), p.width(), p.tail(), p.bounce());
    }
    if (pattern instanceof TestWalk p) {
      return new TestWalk(p.look(), phase, p.stepMs());
    }
    return pattern;
  }

  /** The phase, of chase and test walk too; none if the pattern cannot have one. */
  static Optional<BigDecimal> phaseOf(Pattern pattern) {
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
    if (pattern instanceof Chase p) {
      return Optional.of(p.phase());
    }
    if (pattern instanceof TestWalk p) {
      return Optional.of(p.phase());
    }
    return Optional.empty();
  }

  private static Optional<Ratio> positive(BigDecimal ms) {
    return ms.signum() > 0 ? Optional.of(Ratio.of(ms)) : Optional.empty();
  }
}
