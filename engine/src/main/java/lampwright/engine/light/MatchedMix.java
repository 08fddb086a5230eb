package lampwright.engine.light;

import lampwright.engine.facts.TradeNumbers;

/**
 * What a package does for a colour that names a chromaticity.
 *
 * @param target the chromaticity asked for
 * @param reached the chromaticity emitted: the target, or the nearest that the package mixes
 * @param distance from target to reached in CIE 1976 u'v'; 0 where the target is reached
 * @param drives of the emitters, linear
 * @param millicandela the light of those drives on the axis
 */
public record MatchedMix(
    Chromaticity target,
    Chromaticity reached,
    double distance,
    Colour.Drive drives,
    double millicandela) {
  /** The distance in CIE 1976 u'v' past which a difference is to be seen and reported. */
  public static final double VISIBLE = TradeNumbers.number("colour difference", "visible");

  /** Whether the package can mix the chromaticity asked for. */
  public boolean reachesTarget() {
    return distance == 0;
  }
}
