package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.List;

/**
 * Where a closed curve is its own mirror image: palindromes round each place, in time that grows
 * with the curve's length (Manacher, "A new linear-time on-line algorithm for finding the smallest
 * initial palindrome of a string", Journal of the ACM 22, 1975).
 */
final class Mirrors {
  private Mirrors() {}

  /**
   * The centres c with v[c + i] = v[c - i] all round; with v[c + i] = v[c - 1 - i] if between.
   *
   * @param v samples of a closed curve
   */
  static List<Integer> of(int[] v, boolean between) {
    int n = v.length;
    if (!mayBeMirrored(v)) {
      return List.of();
    }
    // Three rounds, so that each centre of the middle one has half a round on either side.
    int[] round = new int[3 * n];
    for (int i = 0; i < round.length; i++) {
      round[i] = v[i % n];
    }
    int[] reach = reach(round, between ? 1 : 0);
    List<Integer> centres = new ArrayList<>();
    for (int c = 0; c < n; c++) {
      if (reach[n + c] > n / 2) {
        centres.add(c);
      }
    }
    return centres;
  }

  /** A quick look: read backwards, a mirrored curve has the same steps as forwards. */
  private static boolean mayBeMirrored(int[] v) {
    long sum = 0;
    int last = v[v.length - 1];
    for (int value : v) {
      sum += mixed(last, value) - mixed(value, last);
      last = value;
    }
    return sum == 0;
  }

  private static long mixed(int from, int to) {
    long pair = ((long) from << Integer.SIZE ^ to) * 0x9E3779B97F4A7C15L;
    return pair ^ pair >>> 31;
  }

  /** How many i from 0 on have a[c + i] = a[c - by - i], one after another, for each c. */
  private static int[] reach(int[] a, int by) {
    int[] reach = new int[a.length];
    int left = 0;
    int right = -1;
    for (int c = 0; c < a.length; c++) {
      int k = c > right ? 1 - by : Math.min(reach[left + right - c + by], right - c + 1);
      while (c + k < a.length && c - by - k >= 0 && a[c + k] == a[c - by - k]) {
        k++;
      }
      reach[c] = k;
      if (c + k - 1 > right) {
        left = c - by - k + 1;
        right = c + k - 1;
      }
    }
    return reach;
  }
}
