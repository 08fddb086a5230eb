package lampwright.app.live;

import java.util.concurrent.TimeUnit;

/** Counts how often something comes in a second. */
final class RateCounter {
  private static final long WINDOW_NANOS = TimeUnit.SECONDS.toNanos(1);

  private long windowStart;
  private long count;
  private double perSecond;

  RateCounter(long nowNanos) {
    windowStart = nowNanos;
  }

  /** It came once. */
  void count() {
    count++;
  }

  /** How often in the last whole second; 0 before there was one. */
  double perSecond(long nowNanos) {
    long passed = nowNanos - windowStart;
    if (passed >= WINDOW_NANOS) {
      perSecond = count * 1e9 / passed;
      count = 0;
      windowStart = nowNanos;
    }
    return perSecond;
  }
}
