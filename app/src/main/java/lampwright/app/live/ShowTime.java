package lampwright.app.live;

/** Which frame is shown when, from the first time that it is asked. */
final class ShowTime {
  // An instant that is meant to be a frame's own is not missed by rounding.
  private static final double ROUNDING = 1e-6;

  private final double framesPerSecond;
  private boolean runs;
  private long start;

  ShowTime(double framesPerSecond) {
    this.framesPerSecond = framesPerSecond;
  }

  /** The frame of an instant, from 0. */
  long frame(long nanos) {
    if (!runs) {
      runs = true;
      start = nanos;
    }
    return (long) Math.floor((nanos - start) / 1e9 * framesPerSecond + ROUNDING);
  }
}
