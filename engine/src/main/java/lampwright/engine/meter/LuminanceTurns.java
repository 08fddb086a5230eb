package lampwright.engine.meter;

import lampwright.engine.facts.TradeNumbers;

/**
 * The changes of luminance that count towards a general flash by W3C WCAG 2.2: 10 % of the greatest
 * luminance or more from one turn to the next, with the darker of the two below 0.80. A change is
 * at the frame that completes it.
 */
final class LuminanceTurns {
  private static final double LEAST_CHANGE =
      TradeNumbers.number("flash caution", "least change of luminance");
  private static final double DARKER_BELOW = TradeNumbers.number("flash caution", "darker below");
  // Luminances are sums of products; the bounds must not fall to their rounding.
  private static final double ROUNDING = 1e-9;

  // The darkest and brightest since the last change; none before the first frame.
  private double low = Double.POSITIVE_INFINITY;
  private double high = Double.NEGATIVE_INFINITY;
  private boolean mayRise = true;
  private boolean mayFall = true;

  /**
   * Takes the luminance of the next frame, relative to the greatest.
   *
   * @return whether this frame completes a change
   */
  boolean next(double now) {
    boolean rises = mayRise && now - low >= LEAST_CHANGE - ROUNDING && isDark(low);
    boolean falls = mayFall && high - now >= LEAST_CHANGE - ROUNDING && isDark(now);
    if (rises || falls) {
      mayRise = falls;
      mayFall = rises;
      low = now;
      high = now;
      return true;
    }
    low = Math.min(low, now);
    high = Math.max(high, now);
    return false;
  }

  private static boolean isDark(double luminance) {
    return luminance < DARKER_BELOW - ROUNDING;
  }
}
