package lampwright.engine.pattern;

import java.util.function.Function;
import lampwright.engine.field.Field;
import lampwright.engine.field.Group;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Colours;

/**
 * The colour and level that every pattern takes.
 *
 * @param colour what it shines in
 * @param level how bright, 0 to 1, perceptual
 */
public record Look(Colour colour, double level) {
  public static final Shape<Look> SHAPE =
      Shape.of(
          "look",
          Look.class,
          Field.usual("colour", Colours.ANY, Look::colour, Colour.WHITE),
          Field.usual("level", NumberType.SHARE, Look::level, 1.0));

  /** White at full level. */
  public static final Look DEFAULT = SHAPE.draft().make();

  public Look {
    SHAPE.check(colour, level).done();
  }

  /** The look of a pattern, which is among its other fields. */
  static <P> Group<P, Look> group(Function<P, Look> get) {
    return Group.of("look", get, SHAPE, DEFAULT);
  }
}
