package lampwright.exporters.target;

import lampwright.engine.check.Checks;

/**
 * What counts the frames.
 *
 * @param timer its number
 * @param tickUs length of a tick, us
 * @param wide whether it counts in 16 bits
 */
public record FrameClock(int timer, double tickUs, boolean wide) {
  /** Ticks until a counter of 8 bits wraps. */
  private static final int SHORT_TICKS = 256;

  /** The counter in words. */
  public String words() {
    return "timer " + timer;
  }

  /** How often it must be read, in words; empty if that need not be thought of. */
  public String wrapWords() {
    double ms = Math.floor(SHORT_TICKS * tickUs / 1000);
    return wide
        ? ""
        : " It has 8 bits here: call it at least every "
            + Checks.plain(ms)
            + " ms, the time for a frame included.";
  }
}
