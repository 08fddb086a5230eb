package lampwright.engine.situation;

import java.util.List;

/**
 * A situation begins or ends.
 *
 * @param frame the first frame in which it is active, or no longer is
 * @param situation which
 * @param begins whether it begins
 * @param cause why
 * @param deciders the conditions that decided, by their places in the list: those that are on where
 *     it begins or is toggled, those that are off where it ends
 */
public record Change(
    int frame, Situation situation, boolean begins, Cause cause, List<Integer> deciders) {
  /** Why a situation begins or ends. */
  public enum Cause {
    /** Its conditions hold, and have for its delay. */
    CONDITIONS_HOLD,
    /** They hold no longer. */
    CONDITIONS_ENDED,
    /** They have not held for as long as it lingers. */
    LINGER_OVER,
    /** They began to hold, which turns it over. */
    TOGGLED
  }

  public Change {
    deciders = List.copyOf(deciders);
  }
}
