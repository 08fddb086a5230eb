package lampwright.exporters.packed.encode;

import java.util.Arrays;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Format;

/**
 * A closed curve of samples, turned so that its flat parts are at the ends, folded where it is its
 * own mirror image, and cut to what lies between.
 */
final class Wave {
  private final int kind;
  private final int[] shape;
  private final int from;
  private final int to;

  /** What to add to a place in the curve as given to find it in the curve as turned. */
  final int turn;

  private Wave(int kind, int[] shape, int turn, int from, int to) {
    this.kind = kind;
    this.shape = shape;
    this.turn = turn;
    this.from = from;
    this.to = to;
  }

  static Wave of(int[] samples) {
    int n = samples.length;
    int half = n / 2 + 1;
    int[] after = alikeAfter(samples);
    int[] before = alikeBefore(samples);
    int kind = 0;
    int start = flatEnd(samples);
    int length = n;
    int least = to(before, start, n, from(after, start, n)) - from(after, start, n);
    // A curve may be its own mirror image about each of its samples, so none is copied to be looked
    // at.
    for (int mirror = Format.MIRROR; mirror <= Format.MIRROR_BETWEEN; mirror++) {
      for (int centre : Mirrors.of(samples, mirror == Format.MIRROR_BETWEEN)) {
        int from = from(after, centre, half);
        int bytes = to(before, centre, half, from) - from;
        if (bytes < least) {
          least = bytes;
          kind = mirror;
          start = centre;
          length = half;
        }
      }
    }
    int from = from(after, start, length);
    int[] shape = Arrays.copyOf(rotate(samples, start), length);
    return new Wave(kind, shape, n - start, from, from + least);
  }

  /** Where the flat part ends with which a stretch of the curve begins. */
  private static int from(int[] after, int start, int length) {
    return Math.min(after[start], length - 1);
  }

  /** Behind the first sample of the flat part with which a stretch of the curve ends. */
  private static int to(int[] before, int start, int length, int from) {
    return Math.max(from + 1, length - before[(start + length - 1) % before.length]);
  }

  /** How many samples after each one are like it, one after another; at most one round. */
  private static int[] alikeAfter(int[] v) {
    int n = v.length;
    int[] alike = new int[n];
    int run = 0;
    for (int round = 0; round < 2; round++) {
      int next = v[0];
      for (int i = n - 1; i >= 0; i--) {
        run = v[i] == next ? Math.min(n, run + 1) : 0;
        alike[i] = run;
        next = v[i];
      }
    }
    return alike;
  }

  /** The same before each one. */
  private static int[] alikeBefore(int[] v) {
    int n = v.length;
    int[] alike = new int[n];
    int run = 0;
    for (int round = 0; round < 2; round++) {
      int last = v[n - 1];
      for (int i = 0; i < n; i++) {
        run = v[i] == last ? Math.min(n, run + 1) : 0;
        alike[i] = run;
        last = v[i];
      }
    }
    return alike;
  }

  /** Where the longest flat part ends, to start the curve there. */
  private static int flatEnd(int[] v) {
    int n = v.length;
    int best = 0;
    int bestRun = 0;
    int run = 0;
    for (int i = 1; i <= 2 * n; i++) {
      run = v[i % n] == v[(i - 1) % n] ? run + 1 : 0;
      if (run > bestRun && run < n) {
        bestRun = run;
        best = (i + 1) % n;
      }
    }
    return best;
  }

  private static int[] rotate(int[] v, int by) {
    int[] out = new int[v.length];
    for (int i = 0; i < v.length; i++) {
      out[i] = v[(i + by) % v.length];
    }
    return out;
  }

  byte[] bytes() {
    ByteSink out = new ByteSink();
    out.u8(kind).u16(from).u16(to - from - 1);
    for (int i = from; i < to; i++) {
      out.u8(shape[i]);
    }
    return out.toBytes();
  }
}
