package lampwright.exporters.packed.encode;

import java.util.Arrays;

/**
 * What is known of a closed curve: often some samples of many. All work here but {@link #filled}
 * grows with those that are known, not with the curve.
 */
final class KnownSamples {
  private final int size;

  /** Ascending, below the size. */
  private final int[] places;

  /** By the same index. */
  private final int[] values;

  private final long variation;

  KnownSamples(int size, int[] places, int[] values) {
    this.size = size;
    this.places = places;
    this.values = values;
    variation = variation(values);
  }

  /** Puts them on a curve of which nothing is known. */
  void putOn(CurveSketch curve) {
    for (int i = 0; i < places.length; i++) {
      curve.put(places[i], values[i]);
    }
  }

  /** Sum of the steps between them, all round. */
  long variation() {
    return variation;
  }

  private static long variation(int[] values) {
    long sum = 0;
    int last = values[values.length - 1];
    for (int value : values) {
      sum += Math.abs(value - last);
      last = value;
    }
    return sum;
  }

  /**
   * Bytes that the curve takes at least as a {@link Wave}, once each unknown sample has the value
   * of the one before it. What is left out are two flat parts at most, of a curve that may be
   * folded.
   */
  int leastBytes() {
    int longest = 0;
    int second = 0;
    int first = firstOfRun();
    for (int i = 0, start = 0; i < places.length; i++) {
      int index = (first + i) % places.length;
      int next = (index + 1) % places.length;
      if (i + 1 == places.length || values[next] != values[index]) {
        int from = places[(first + start) % places.length];
        int flat = Math.floorMod(places[next] - from, size);
        flat = flat == 0 ? size : flat;
        if (flat > longest) {
          second = longest;
          longest = flat;
        } else {
          second = Math.max(second, flat);
        }
        start = i + 1;
      }
    }
    return Math.max(1, (size - longest - second) / 2 - 2);
  }

  // Where a flat part begins, so that none is counted in two.
  private int firstOfRun() {
    for (int i = 0; i < values.length; i++) {
      if (values[i] != values[(i + values.length - 1) % values.length]) {
        return i;
      }
    }
    return 0;
  }

  /** All samples of the curve, but only every one of a step apart: places must be multiples. */
  int[] filled(int step) {
    int[] samples = new int[size / step];
    Arrays.fill(samples, -1);
    for (int i = 0; i < places.length; i++) {
      samples[places[i] / step] = values[i];
    }
    return WaveFinder.filled(samples);
  }
}
