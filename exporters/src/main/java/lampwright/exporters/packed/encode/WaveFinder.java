package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Finds few smooth closed curves behind the columns of a period. A column whose own cycle is no
 * whole number of frames looks rough frame by frame, but is smooth when its samples are put in
 * order of their phase; columns that run after each other read one curve at different phases, where
 * need be on a finer grid than the frames give.
 */
final class WaveFinder {
  static final int MAX_PERIOD = 4096;

  /** Parts of a pixel's way by which pixels are apart in the waves that people set. */
  private static final int[] SPREADS = {1, 2, 3, 4, 5, 10};

  /** Slots by which the speed and the order of samples are found. */
  private static final int MOST_ROUGH = 3;

  private static final int[] PIXEL_BYTES = {4, 3, 1};

  private WaveFinder() {}

  /**
   * Curves for the slots of a period.
   *
   * @param limit bytes above which curves are of no use
   */
  static List<Fit> fits(
      List<int[]> values,
      List<int[]> slots,
      int[] columns,
      List<FineGrid.Speed> speeds,
      long limit) {
    List<Fit> fits = new ArrayList<>();
    if (values.isEmpty()) {
      return fits;
    }
    int period = values.get(0).length;
    List<FineGrid.Speed> tries = new ArrayList<>();
    if (period <= MAX_PERIOD) {
      int lag = smoothLag(values, period);
      int pace = inverse(lag, period);
      List<int[]> sorted = new ArrayList<>();
      for (int[] v : values) {
        int[] y = new int[period];
        for (int i = 0; i < period; i++) {
          y[i] = v[(int) ((long) i * lag % period)];
        }
        sorted.add(y);
      }
      fits.add(shifted(sorted, period, pace));
      if (lag != 1) {
        fits.add(shifted(values, period, 1));
      }
      tries.add(new FineGrid.Speed(pace, period));
    }
    FineGrid.Speed written = smoothest(values, speeds);
    if (written != null) {
      tries.add(written);
    }
    for (FineGrid.Speed speed : tries) {
      for (int bytes : PIXEL_BYTES) {
        Fit fit = FineGrid.fit(values, slots, columns, bytes, speed, limit);
        if (fit != null) {
          fits.add(fit);
        }
      }
    }
    return fits;
  }

  /** The speed among those given that makes the roughest slots smoothest; null if none fits. */
  private static FineGrid.@Nullable Speed smoothest(
      List<int[]> values, List<FineGrid.Speed> speeds) {
    List<int[]> rough = roughest(values);
    FineGrid.Speed best = null;
    long least = Long.MAX_VALUE;
    for (FineGrid.Speed speed : speeds) {
      long sum = rough.size() * (long) (speed.size() / 64);
      if (sum >= least) {
        continue;
      }
      // Where no two samples meet, their order is known without walking along the curve.
      boolean few = rough.get(0).length <= speed.size();
      PhaseOrder order = few ? PhaseOrder.of(rough.get(0).length, speed) : null;
      for (int i = 0; i < rough.size() && sum < least; i++) {
        if (order != null) {
          sum += order.variation(rough.get(i), (least - sum) / 64) * 64;
          continue;
        }
        int[] curve = FineGrid.curve(rough.get(i), speed);
        // Most speeds are given up long before their curve is walked to its end.
        sum =
            curve.length == 0
                ? Long.MAX_VALUE
                : sum + variationOfKnown(curve, (least - sum) / 64) * 64;
      }
      if (sum < least) {
        least = sum;
        best = speed;
      }
    }
    return best;
  }

  private static List<int[]> roughest(List<int[]> values) {
    List<int[]> rough = new ArrayList<>();
    long[] most = new long[MOST_ROUGH];
    for (int[] v : values) {
      long own = variation(v, 1);
      int at = rough.size();
      while (at > 0 && most[at - 1] < own) {
        at--;
      }
      if (at < MOST_ROUGH) {
        System.arraycopy(most, at, most, at + 1, MOST_ROUGH - 1 - at);
        most[at] = own;
        rough.add(at, v);
        if (rough.size() > MOST_ROUGH) {
          rough.remove(MOST_ROUGH);
        }
      }
    }
    return rough;
  }

  static int[] spreads() {
    return SPREADS.clone();
  }

  private static Fit shifted(List<int[]> sorted, int period, int pace) {
    List<int[]> waves = new ArrayList<>();
    Map<Long, List<Integer>> alike = new HashMap<>();
    int[] wave = new int[sorted.size()];
    int[] phase = new int[sorted.size()];
    for (int s = 0; s < wave.length; s++) {
      int[] own = sorted.get(s);
      List<Integer> candidates = alike.computeIfAbsent(mark(own), m -> new ArrayList<>());
      wave[s] = -1;
      for (int w : candidates) {
        int by = wave[s] < 0 ? shift(waves.get(w), own) : -1;
        if (by >= 0) {
          wave[s] = w;
          phase[s] = by;
        }
      }
      if (wave[s] < 0) {
        wave[s] = waves.size();
        candidates.add(waves.size());
        waves.add(own);
      }
    }
    return new Fit(period, pace, waves, wave, phase);
  }

  /** The same for a curve wherever it is taken to begin. */
  private static long mark(int[] v) {
    long sum = 0;
    int last = v[v.length - 1];
    for (int value : v) {
      long pair = (last * 256L + value + 1) * 0x9E3779B97F4A7C15L;
      sum += pair ^ (pair >>> 31);
      last = value;
    }
    return sum;
  }

  /** The shift d with b[i] = a[i + d] all round, or -1. */
  static int shift(int[] a, int[] b) {
    int n = a.length;
    int[] fail = new int[n];
    for (int i = 1, k = 0; i < n; i++) {
      while (k > 0 && b[i] != b[k]) {
        k = fail[k - 1];
      }
      k += b[i] == b[k] ? 1 : 0;
      fail[i] = k;
    }
    for (int i = 0, k = 0; i < 2 * n - 1; i++) {
      while (k > 0 && a[i % n] != b[k]) {
        k = fail[k - 1];
      }
      k += a[i % n] == b[k] ? 1 : 0;
      if (k == n) {
        return i - n + 1;
      }
    }
    return -1;
  }

  private static int smoothLag(List<int[]> values, int period) {
    List<int[]> rough = roughest(values);
    int best = 1;
    long least = Long.MAX_VALUE;
    for (int lag = 1; lag <= Math.max(1, period / 2); lag++) {
      if (gcd(lag, period) != 1) {
        continue;
      }
      long sum = 0;
      for (int[] v : rough) {
        sum += variation(v, lag);
      }
      if (sum < least) {
        least = sum;
        best = lag;
      }
    }
    return best;
  }

  private static long variation(int[] v, int lag) {
    long sum = 0;
    int j = lag % v.length;
    for (int value : v) {
      sum += Math.abs(v[j] - value);
      j = j + 1 == v.length ? 0 : j + 1;
    }
    return sum;
  }

  static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }

  private static int inverse(int lag, int period) {
    for (int k = 1; k < period; k++) {
      if ((long) k * lag % period == 1) {
        return k;
      }
    }
    return 1 % period == 1 ? 1 : 0;
  }

  /** Sum of the steps between known samples, all round; negatives are unknown. */
  static long variationOfKnown(int[] v) {
    return variationOfKnown(v, Long.MAX_VALUE);
  }

  /** The same, or something above the limit where it is above it. */
  private static long variationOfKnown(int[] v, long limit) {
    long sum = 0;
    int last = -1;
    int first = -1;
    for (int value : v) {
      if (value >= 0) {
        if (sum > limit) {
          return sum;
        }
        if (last >= 0) {
          sum += Math.abs(value - last);
        } else {
          first = value;
        }
        last = value;
      }
    }
    return sum + Math.abs(first - last);
  }

  /** Gives unknown samples the value before them. */
  static int[] filled(int[] v) {
    int[] out = Arrays.copyOf(v, v.length);
    int last = -1;
    for (int i = 0; i < 2 * out.length; i++) {
      int k = i % out.length;
      if (out[k] < 0) {
        out[k] = last;
      } else {
        last = out[k];
      }
    }
    return out;
  }
}
