package lampwright.app.workshop.model;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lampwright.app.workshop.model.problems.Target;

/**
 * One reading of the bench.
 *
 * @param key of its name
 * @param reading in words and figures, short
 * @param share of its limit, 0 to 1 and past it; none if there is no limit
 * @param mark a second share, such as the greatest of the scene beside the present one
 * @param state how it stands to its limit
 * @param details all that is measured, in several lines
 * @param target the part of the project that it leads to
 * @param frame the frame that it leads to
 */
public record Gauge(
    String key,
    String reading,
    OptionalDouble share,
    OptionalDouble mark,
    State state,
    String details,
    Optional<Target> target,
    OptionalInt frame) {
  /** How a reading stands to its limit. */
  public enum State {
    /** Not known yet, or nothing to measure. */
    OPEN,
    /** Within its limit. */
    FITS,
    /** Within, but near it. */
    NEAR,
    /** Past it. */
    OVER
  }

  /** How a share of a limit stands: near it from nine tenths on. */
  static State state(double share) {
    return share > 1 ? State.OVER : share > 0.9 ? State.NEAR : State.FITS;
  }
}
