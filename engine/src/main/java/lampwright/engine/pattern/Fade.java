package lampwright.engine.pattern;

import java.util.Optional;
import lampwright.engine.check.Checks;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Mix;

/**
 * Moves from one colour and level to another over the whole cue.
 *
 * @param look its colour stands where from or to is not given; its level is not used
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
  public static final String KIND = "fade";
  public static final double DEFAULT_FROM_LEVEL = 0;
  public static final double DEFAULT_TO_LEVEL = 1;

  public Fade {
    Checks.of(KIND).range("fromLevel", fromLevel, 0, 1).range("toLevel", toLevel, 0, 1).done();
  }

  @Override
  public String kind() {
    return KIND;
  }

  @Override
  public Painter painter(Stage stage) {
    Mix[] start = stage.mixes(from.orElse(look.colour()));
    Mix[] end = stage.mixes(to.orElse(look.colour()));
    Blender blender = new Blender(stage.curve());
    return (tMs, drives) -> {
      double u = easing.ease(tMs.over(stage.lengthMs()).doubleValue());
      blender.mix(start, end, fromLevel, toLevel, u, drives);
    };
  }
}
