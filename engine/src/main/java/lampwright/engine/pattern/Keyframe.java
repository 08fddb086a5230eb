package lampwright.engine.pattern;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.check.Checks;
import lampwright.engine.light.Colour;

/**
 * A colour and level at a time.
 *
 * @param atMs time since the start of the cue, 0 to a day
 * @param colour the pattern's own if not given
 * @param level 0 to 1; the pattern's own if not given
 * @param easing how the way to the next keyframe is spread
 */
public record Keyframe(
    BigDecimal atMs, Optional<Colour> colour, OptionalDouble level, Easing easing) {
  public Keyframe {
    atMs = Checks.canonical(atMs);
    Checks checks = Checks.of("keyframe").range("atMs", atMs, 0, Times.MAX_MS);
    if (level.isPresent()) {
      checks.range("level", level.getAsDouble(), 0, 1);
    }
    checks.done();
  }
}
