package lampwright.engine.pattern;

import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/**
 * A pattern made ready for the pixels it paints. What it paints depends on no call before: any
 * instant may be asked. For one thread.
 */
@FunctionalInterface
public interface Painter {
  /**
   * Writes the drives of every pixel at one instant.
   *
   * @param tMs time since the start of the cue, at least 0
   * @param drives four for each pixel, all written
   */
  void paint(Moment tMs, double[] drives);

  /** The same for an instant that is asked for once. */
  default void paint(Ratio tMs, double[] drives) {
    paint(Moment.of(tMs), drives);
  }
}
