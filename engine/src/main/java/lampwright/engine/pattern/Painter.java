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

  /**
   * The same as quickly as it can be had: for drives that are off by a little.
   *
   * @return the most that a drive is off by: 0, or enough to cover the roundings of some thousand
   *     steps that follow
   */
  default double paintNearly(Moment tMs, double[] drives) {
    paint(tMs, drives);
    return 0;
  }

  /** The same for an instant that is asked for once. */
  default void paint(Ratio tMs, double[] drives) {
    paint(Moment.of(tMs), drives);
  }
}
