package lampwright.engine.meter;

import lampwright.engine.facts.TradeNumbers;

/**
 * The changes that count towards a red flash by W3C WCAG 2.2: to or from a state of saturated red,
 * by more than 0.2 in the CIE 1976 u'v' diagram. As with luminance they are counted from turn to
 * turn, to red and from it by turns: a change is at the first frame that is so far from any state
 * since the change before.
 */
final class RedTurns {
  private static final double SATURATED = TradeNumbers.number("flash caution", "saturated red");
  private static final double ROUNDING = 1e-9;

  private final FarPoints any = new FarPoints();
  private final FarPoints red = new FarPoints();
  private boolean mayCome = true;
  private boolean mayGo = true;

  /** Whether linear red, green and blue, unclipped, are a saturated red: R >= 0.8 (R + G + B). */
  static boolean isSaturated(double r, double g, double b) {
    double sum = r + g + b;
    return r >= (SATURATED - ROUNDING) * sum && r > 0;
  }

  /**
   * Takes the state of the next frame.
   *
   * @param u CIE 1976 u', and {@code v} likewise
   * @return whether this frame completes a change
   */
  boolean next(boolean saturated, double u, double v) {
    boolean comes = mayCome && saturated && any.reach(u, v);
    boolean goes = !comes && mayGo && red.reach(u, v);
    if (comes || goes) {
      mayCome = goes;
      mayGo = comes;
      any.clear();
      red.clear();
    }
    if (mayCome) {
      any.add(u, v);
    }
    if (mayGo && saturated) {
      red.add(u, v);
    }
    return comes || goes;
  }
}
