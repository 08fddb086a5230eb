package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.List;

/** Repetition in a list of frames, each given by a hash. */
final class Periods {
  /**
   * Frames that a repetition has to save, to be worth a program entry and its cuts. Found by trial:
   * with 12 or 48 the corpus packs to the same 72,069 bytes but for 5.
   */
  private static final int LEAST_GAIN = 24;

  /** Most comparisons, less than a second of them: long scenes are searched for short periods. */
  private static final long WORK = 400_000_000L;

  /** Frames from..to repeat with the period. */
  record Repeat(int from, int to, int period) {}

  private Periods() {}

  /** The smallest divisor of the length with which all of it repeats; the length if none does. */
  static int dividing(long[] h) {
    for (int p = 1; p < h.length; p++) {
      if (h.length % p == 0 && repeatsAll(h, p)) {
        return p;
      }
    }
    return h.length;
  }

  /** The smallest period with which all of it repeats, whole or not; the length if none does. */
  static int smallest(long[] h) {
    int[] fail = new int[h.length];
    for (int i = 1, k = 0; i < h.length; i++) {
      while (k > 0 && h[i] != h[k]) {
        k = fail[k - 1];
      }
      k += h[i] == h[k] ? 1 : 0;
      fail[i] = k;
    }
    return h.length - fail[h.length - 1];
  }

  private static boolean repeatsAll(long[] h, int p) {
    for (int i = p; i < h.length; i++) {
      if (h[i] != h[i - p]) {
        return false;
      }
    }
    return true;
  }

  /** Parts that repeat, from the front, apart from each other; still parts don't count. */
  static List<Repeat> repeats(long[] h, int longestPeriod) {
    int n = h.length;
    int most = (int) Math.min(longestPeriod, Math.max(16, WORK / n));
    int[] bestEnd = new int[n];
    int[] bestPeriod = new int[n];
    for (int p = Math.min(most, n / 2); p >= 2; p--) {
      int run = 0;
      for (int t = n - 1 - p; t >= 0; t--) {
        run = h[t] == h[t + p] ? run + 1 : 0;
        if (run >= p && run >= LEAST_GAIN && t + p + run >= bestEnd[t]) {
          bestEnd[t] = t + p + run;
          bestPeriod[t] = p;
        }
      }
    }
    List<Repeat> found = new ArrayList<>();
    int t = 0;
    while (t < n) {
      if (bestEnd[t] > 0 && !still(h, t, bestPeriod[t])) {
        found.add(new Repeat(t, bestEnd[t], bestPeriod[t]));
        t = bestEnd[t];
      } else {
        t++;
      }
    }
    return found;
  }

  private static boolean still(long[] h, int from, int count) {
    for (int i = 1; i < count; i++) {
      if (h[from + i] != h[from]) {
        return false;
      }
    }
    return true;
  }
}
