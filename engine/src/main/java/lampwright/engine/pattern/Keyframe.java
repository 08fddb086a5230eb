package lampwright.engine.pattern;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.check.Checks;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Shape;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Colours;

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
  public static final Field<Keyframe, BigDecimal> AT_MS =
      Field.required("atMs", Times.MS, Keyframe::atMs, BigDecimal.ZERO);
  public static final Field<Keyframe, Optional<Colour>> COLOUR =
      Field.optional("colour", OptionalType.of(Colours.ANY), Keyframe::colour);
  public static final Field<Keyframe, OptionalDouble> LEVEL =
      Field.optional("level", OptionalType.ofNumber(NumberType.SHARE), Keyframe::level);
  public static final Field<Keyframe, Easing> EASING =
      Field.usual("easing", Easing.TYPE, Keyframe::easing, Easing.LINEAR);

  public static final Shape<Keyframe> SHAPE =
      Shape.of("keyframe", Keyframe.class, AT_MS, COLOUR, LEVEL, EASING);

  /** What new keyframes begin with: from dark to light in a second. */
  static final List<Keyframe> FIRST =
      List.of(
          at(BigDecimal.ZERO, OptionalDouble.of(0)),
          at(BigDecimal.valueOf(1000), OptionalDouble.of(1)));

  public Keyframe {
    atMs = Checks.canonical(atMs);
    SHAPE.check(atMs, colour, level, easing).done();
  }

  // What represents one that is broken comes at the time of the one before it: so the order is not
  // at fault.
  static Keyframe after(Optional<Keyframe> before) {
    return at(before.map(Keyframe::atMs).orElse(BigDecimal.ZERO), OptionalDouble.empty());
  }

  private static Keyframe at(BigDecimal atMs, OptionalDouble level) {
    return new Keyframe(atMs, Optional.empty(), level, Easing.LINEAR);
  }
}
