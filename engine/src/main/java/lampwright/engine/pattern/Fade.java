package lampwright.engine.pattern;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Shape;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Colours;
import lampwright.engine.light.Mix;

/**
 * Moves from one colour and level to another over the whole cue.
 *
 * @param look its colour is used where from or to is not given; its level is not used
 * @param from the colour at the start
 * @param to the colour at the end
 * @param fromLevel the level at the start, 0 to 1
 * @param toLevel the level at the end, 0 to 1
 * @param easing how it is spread
 */
public record Fade(
    Look look,
    Optional<Colour> from,
    Optional<Colour> to,
    double fromLevel,
    double toLevel,
    Easing easing)
    implements Pattern {
  public static final double DEFAULT_FROM_LEVEL = 0;
  public static final double DEFAULT_TO_LEVEL = 1;

  public static final Shape<Fade> SHAPE =
      Shape.of(
          "fade",
          Fade.class,
          Look.group(Fade::look),
          Field.optional("from", OptionalType.of(Colours.ANY), Fade::from),
          Field.optional("to", OptionalType.of(Colours.ANY), Fade::to),
          Field.usual("fromLevel", NumberType.SHARE, Fade::fromLevel, DEFAULT_FROM_LEVEL),
          Field.usual("toLevel", NumberType.SHARE, Fade::toLevel, DEFAULT_TO_LEVEL),
          Field.usual("easing", Easing.TYPE, Fade::easing, Easing.LINEAR));

  public Fade {
    SHAPE.check(look, from, to, fromLevel, toLevel, easing).done();
  }

  @Override
  public Shape<Fade> shape() {
    return SHAPE;
  }

  @Override
  public Map<String, Colour> colours() {
    Map<String, Colour> colours = new LinkedHashMap<>();
    if (from.isEmpty() || to.isEmpty()) {
      colours.put("colour", look.colour());
    }
    from.ifPresent(colour -> colours.put("from", colour));
    to.ifPresent(colour -> colours.put("to", colour));
    return colours;
  }

  @Override
  public Painter painter(PaintContext context) {
    Mix[] start = context.mixes(from.orElse(look.colour()));
    Mix[] end = context.mixes(to.orElse(look.colour()));
    Blender blender = new Blender(context.curve());
    return (tMs, drives) -> {
      double u = easing.ease(tMs.over(context.lengthMs()));
      blender.mix(start, end, fromLevel, toLevel, u, drives);
    };
  }
}
