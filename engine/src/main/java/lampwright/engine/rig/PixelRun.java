package lampwright.engine.rig;

import lampwright.engine.check.Checks;

/**
 * Neighbouring pixels of one chain.
 *
 * @param chain the chain's id
 * @param from the first pixel, counted from 0 at the data input
 * @param count how many pixels, at least 1
 */
public record PixelRun(String chain, int from, int count) {
  public static final int DEFAULT_FROM = 0;
  public static final int DEFAULT_COUNT = 1;

  public PixelRun {
    Checks.of("pixels")
        .range("from", from, 0, Chain.MAX_PIXELS - 1)
        .range("count", count, 1, Chain.MAX_PIXELS)
        .done();
  }

  /** The pixel after the last. */
  public int end() {
    return from + count;
  }
}
