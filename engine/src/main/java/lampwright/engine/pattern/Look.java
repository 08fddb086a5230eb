package lampwright.engine.pattern;

import lampwright.engine.check.Checks;
import lampwright.engine.light.Colour;

/**
 * The colour and level that every pattern takes.
 *
 * @param colour what it shines in
 * @param level how bright, 0 to 1, perceptual
 */
public record Look(Colour colour, double level) {
  /** White at full level. */
  public static final Look DEFAULT = new Look(Colour.WHITE, 1);

  public Look {
    Checks.of("look").range("level", level, 0, 1).done();
  }
}
