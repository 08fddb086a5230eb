package lampwright.engine.render;

import com.google.common.primitives.ImmutableIntArray;
import java.util.List;
import java.util.OptionalInt;
import lampwright.engine.light.Mixer;
import lampwright.engine.scene.Blend;

/** The packages of rows of pixels, as runs of neighbours: a row is laid run by run. */
final class PackageRuns {
  private static final int STRIDE = 3;

  // Three numbers a run: its first place in its row, its first package, how many there are. All in
  // one array, since with a thousand small lamps most of the time goes into reading from memory.
  private final int[] runs;

  /**
   * @param rows the packages of each row in order; all rows are of one length
   */
  PackageRuns(List<int[]> rows) {
    ImmutableIntArray.Builder found = ImmutableIntArray.builder();
    for (int[] row : rows) {
      for (int k = 0; k < row.length; ) {
        int end = k + 1;
        while (end < row.length && row[end] == row[end - 1] + 1) {
          end++;
        }
        found.add(k).add(row[k]).add(end - k);
        k = end;
      }
    }
    runs = found.build().toArray();
  }

  /** The place of a package in its row; none if it is in none. */
  OptionalInt placeOf(int at) {
    for (int r = 0; r < runs.length; r += STRIDE) {
      int k = at - runs[r + 1];
      if (k >= 0 && k < runs[r + 2]) {
        return OptionalInt.of(runs[r] + k);
      }
    }
    return OptionalInt.empty();
  }

  /** Lays the light of a row over the light so far, in the place of every row. */
  void lay(Blend blend, double[] over, double a, double[] light) {
    for (int r = 0; r < runs.length; r += STRIDE) {
      blend.lay(
          over,
          runs[r] * Mixer.SLOTS,
          a,
          light,
          runs[r + 1] * Mixer.SLOTS,
          runs[r + 2] * Mixer.SLOTS);
    }
  }

  /** Makes them dark. */
  void darken(Light light) {
    for (int r = 0; r < runs.length; r += STRIDE) {
      light.darken(runs[r + 1], runs[r + 1] + runs[r + 2]);
    }
  }

  /** Adds what their drives are off by. */
  void addError(double error, Light light) {
    for (int r = 0; r < runs.length; r += STRIDE) {
      int end = runs[r + 1] + runs[r + 2];
      for (int at = runs[r + 1]; at < end; at++) {
        light.addError(at, error);
      }
    }
  }

  /** Whether all packages are marked. */
  boolean allIn(boolean[] marks) {
    for (int r = 0; r < runs.length; r += STRIDE) {
      int end = runs[r + 1] + runs[r + 2];
      for (int at = runs[r + 1]; at < end; at++) {
        if (!marks[at]) {
          return false;
        }
      }
    }
    return true;
  }

  /** Marks all packages once, and again those that were. */
  void markTwice(boolean[] once, boolean[] twice) {
    for (int r = 0; r < runs.length; r += STRIDE) {
      int end = runs[r + 1] + runs[r + 2];
      for (int at = runs[r + 1]; at < end; at++) {
        twice[at] |= once[at];
        once[at] = true;
      }
    }
  }

  /** Whether a package is marked. */
  boolean anyIn(boolean[] marks) {
    for (int r = 0; r < runs.length; r += STRIDE) {
      int end = runs[r + 1] + runs[r + 2];
      for (int at = runs[r + 1]; at < end; at++) {
        if (marks[at]) {
          return true;
        }
      }
    }
    return false;
  }

  /** Marks all packages. */
  void mark(boolean[] marks) {
    for (int r = 0; r < runs.length; r += STRIDE) {
      int end = runs[r + 1] + runs[r + 2];
      for (int at = runs[r + 1]; at < end; at++) {
        marks[at] = true;
      }
    }
  }
}
