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

  private Wave(int kind, int[] shape, int turn) {
    this.kind = kind;
    this.shape = shape;
    this.turn = turn;
    int a = 0;
    while (a + 1 < shape.length && shape[a + 1] == shape[0]) {
      a++;
    }
    int b = shape.length;
    while (b - 2 >= a && shape[b - 2] == shape[shape.length - 1]) {
      b--;
    }
    from = a;
    to = b;
  }

  static Wave of(int[] samples) {
    int n = samples.length;
    Wave best = new Wave(0, rotate(samples, flatEnd(samples)), n - flatEnd(samples));
    for (int kind = Format.MIRROR; kind <= Format.MIRROR_BETWEEN; kind++) {
      for (int centre : Mirrors.of(samples, kind == Format.MIRROR_BETWEEN)) {
        int[] half = Arrays.copyOf(rotate(samples, centre), n / 2 + 1);
        Wave wave = new Wave(kind, half, n - centre);
        if (wave.to - wave.from < best.to - best.from) {
          best = wave;
        }
      }
    }
    return best;
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
