package lampwright.exporters.target;

import lampwright.engine.review.Finding;

/** What a controller's line driver does for one chain. */
public sealed interface Line {
  /**
   * Our driver sends it, within the limits of its pixels.
   *
   * @param times what is really sent
   * @param clockRoom by what share the clock may be off until a bit leaves its limits
   * @param alonePort whether interrupt routines must leave other pins of the port alone meanwhile
   */
  record Sent(SentTimes times, double clockRoom, boolean alonePort) implements Line {}

  /**
   * Our driver can't.
   *
   * @param why in words
   */
  record Impossible(Finding why) implements Line {}

  /** The builder's own function sends it. */
  record Builders() implements Line {}
}
