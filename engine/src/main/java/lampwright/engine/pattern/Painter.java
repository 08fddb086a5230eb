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

  /**
   * For how many frames from an instant on, its own counted, the same is painted as at that
   * instant: at least 1, which is also the answer where there is no quick one. Only for painters
   * that paint exactly even when they are asked to paint nearly.
   *
   * @param frameMs time from frame to frame, above 0
   */
  default long sameFor(Moment tMs, Ratio frameMs) {
    return 1;
  }

  /** The same as {@link #paint(Moment, double[])} for an instant that is asked for once. */
  default void paint(Ratio tMs, double[] drives) {
    paint(Moment.of(tMs), drives);
  }
}
