package lampwright.exporters.packed.encode;

import java.util.Arrays;

/**
 * What is known of a closed curve: often some samples of many. All work here grows with those that
 * are known, not with the curve.
 */
final class KnownSamples {
  // Sorting takes some ten times as long for a sample as walking does.
  private static final int FEW = 16;

  private final int size;

  /** Ascending, below the size. */
  private final int[] places;

  /** By the same index. */
  private final int[] values;

  private KnownSamples(int size, int[] places, int[] values) {
    this.size = size;
    this.places = places;
    this.values = values;
  }

  /** Whether so many samples are sorted with less work than the curve is walked along. */
  static boolean areFew(int samples, int size) {
    return samples < size / FEW;
  }

  /**
   * Reads them off a curve, walking along it.
   *
   * @param curve with -1 where nothing is known
   */
  static KnownSamples of(int[] curve) {
    int[] places = new int[curve.length];
    int count = 0;
    for (int place = 0; place < curve.length; place++) {
      if (curve[place] >= 0) {
        places[count++] = place;
      }
    }
    return of(curve, places, count);
  }

  /**
   * Reads them off a curve where there are few.
   *
   * @param curve with -1 where nothing is known
   * @param places where something is known, in any order and also more than once; they are sorted
   */
  static KnownSamples of(int[] curve, int[] places) {
    Arrays.sort(places);
    int count = 0;
    for (int i = 0; i < places.length; i++) {
      if (i == 0 || places[i] != places[i - 1]) {
        places[count++] = places[i];
      }
    }
    return of(curve, places, count);
  }

  private static KnownSamples of(int[] curve, int[] places, int count) {
    int[] own = Arrays.copyOf(places, count);
    int[] values = new int[count];
    for (int i = 0; i < count; i++) {
      values[i] = curve[own[i]];
    }
    return new KnownSamples(curve.length, own, values);
  }

  /** Where they are, ascending. */
  int[] places() {
    return places;
  }

  /** Puts them on a curve. */
  void putOn(int[] curve) {
    for (int i = 0; i < places.length; i++) {
      curve[places[i]] = values[i];
    }
  }

  /** Makes them unknown on a curve. */
  void wipeOff(int[] curve) {
    for (int place : places) {
      curve[place] = -1;
    }
  }

  /** Sum of the steps between them, all round. */
  long variation() {
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
