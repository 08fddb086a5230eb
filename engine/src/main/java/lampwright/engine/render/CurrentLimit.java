package lampwright.engine.render;

import java.util.function.DoubleSupplier;

/**
 * Finds the factor by which drives must be scaled so that the current, after rounding to bytes,
 * meets a limit.
 */
final class CurrentLimit {
  // Rounding can leave a scaled frame a little over; each further try goes down at least this much.
  private static final double LEAST_STEP = 1 - 1.0 / 4096;
  private static final int TRIES = 200;

  private final double idleMilliamps;
  private final double limitMilliamps;

  CurrentLimit(double idleMilliamps, double limitMilliamps) {
    this.idleMilliamps = idleMilliamps;
    this.limitMilliamps = limitMilliamps;
  }

  /** Current after rounding, of whatever the limit is for, at a factor. */
  @FunctionalInterface
  interface CurrentDraw {
    double milliamps(double factor);
  }

  /**
   * The factor, 0 to 1: 1 if the limit is met anyhow, 0 if the idle current alone is over it.
   *
   * @param exactMilliamps current before rounding, at factor 1; asked for only if the limit is not
   *     met
   */
  double factor(DoubleSupplier exactMilliamps, CurrentDraw draw) {
    double now = draw.milliamps(1);
    if (now <= limitMilliamps) {
      return 1;
    }
    double room = limitMilliamps - idleMilliamps;
    if (room <= 0) {
      return 0;
    }
    double factor = Math.min(1, room / (exactMilliamps.getAsDouble() - idleMilliamps));
    for (int i = 0; i < TRIES; i++) {
      now = draw.milliamps(factor);
      if (now <= limitMilliamps) {
        return factor;
      }
      factor *= Math.min(LEAST_STEP, room / (now - idleMilliamps));
    }
    return 0;
  }
}
