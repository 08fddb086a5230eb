package lampwright.app.workshop.model.ribbon;

import lampwright.app.workshop.words.Titles;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.rig.LampFunction;

/**
 * A pattern that can be placed on lamps.
 *
 * @param title for people
 * @param pattern as it is
 * @param usualColour whether it takes the colour that lamps of a function usually have
 */
public record Placeable(String title, Pattern pattern, boolean usualColour) {
  /** A kind of pattern with its usual values. */
  public static Placeable ofKind(String kind) {
    return new Placeable(Titles.ofKind(kind), Patterns.fresh(kind, Look.DEFAULT), true);
  }

  /** The pattern for lamps of a function. */
  public Pattern on(LampFunction function) {
    return usualColour ? Patterns.withLook(pattern, new Look(function.usualColour(), 1)) : pattern;
  }
}
