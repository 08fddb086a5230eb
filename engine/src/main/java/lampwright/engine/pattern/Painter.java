package lampwright.engine.pattern;

import lampwright.engine.time.Ratio;

/**
 * A pattern made ready for the pixels it paints. Keeps no state between calls: any instant may be
 * asked.
 */
@FunctionalInterface
public interface Painter {
  /**
   * Writes the drives of every pixel at one instant.
   *
   * @param tMs time since the start of the cue, at least 0
   * @param drives four for each pixel, all written
   */
  void paint(Ratio tMs, double[] drives);
}
