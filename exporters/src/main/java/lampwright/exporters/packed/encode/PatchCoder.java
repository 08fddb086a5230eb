package lampwright.exporters.packed.encode;

import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.format.Format;

/** Codes "set these columns to these values" as PATCH and FILL instructions. */
final class PatchCoder {
  /** Bytes of a pattern that a fill repeats: pixels of 1, 3 and 4 bytes, one to some together. */
  private static final int[] PATTERNS = {1, 2, 3, 4, 6, 8, 12, 16, 32};

  private final LampTable table;
  private final Coding coding;

  /** For each index the first one after it whose column is not next to that of the one before. */
  private final int[] runEnd;

  PatchCoder(LampTable table, Coding coding) {
    this.table = table;
    this.coding = coding;
    runEnd = new int[table.columns.length];
    int end = runEnd.length;
    for (int i = runEnd.length - 1; i >= 0; i--) {
      runEnd[i] = end;
      if (i > 0 && table.columns[i] != table.columns[i - 1] + 1) {
        end = i;
      }
    }
  }

  /**
   * Writes the instructions.
   *
   * @param row wanted values, by index; true of every column of the lamp
   * @param must which indices have to be written; the others already have the value
   */
  void write(ByteSink out, int[] row, boolean[] must) {
    int i = 0;
    while (i < row.length) {
      if (!must[i]) {
        i++;
        continue;
      }
      int run = runEnd[i];
      int end = tryFill(out, row, must, i, run);
      if (end == i) {
        end = patch(out, row, must, i, run);
      }
      i = end;
    }
  }

  private int tryFill(ByteSink out, int[] row, boolean[] must, int from, int run) {
    int bestEnd = from;
    int bestPattern = 0;
    int bestGain = 0;
    for (int pattern : PATTERNS) {
      int end = Math.min(run, from + pattern);
      int limit = Math.min(run, from + Format.MAX_FILL);
      while (end < limit && row[end] == row[end - pattern]) {
        end++;
      }
      while (end > from && !must[end - 1]) {
        end--;
      }
      int needed = 0;
      for (int k = from; k < end; k++) {
        needed += must[k] ? 1 : 0;
      }
      int gain = needed - pattern - 1;
      if (end - from > pattern && gain > bestGain) {
        bestGain = gain;
        bestEnd = end;
        bestPattern = pattern;
      }
    }
    if (bestGain > 0) {
      out.u8(Format.FILL + bestPattern - 1).number(table.columns[from], coding.columnBytes());
      out.u8(bestEnd - from - 1);
      for (int k = 0; k < bestPattern; k++) {
        out.u8(row[from + k]);
      }
    }
    return bestEnd;
  }

  private int patch(ByteSink out, int[] row, boolean[] must, int from, int run) {
    int limit = Math.min(run, from + Format.MAX_PATCH);
    int end = from + 1;
    int gap = 0;
    for (int k = end; k < limit && gap <= 1 + coding.columnBytes(); k++) {
      if (must[k]) {
        end = k + 1;
        gap = 0;
        if (longRepeatAt(row, must, k, run)) {
          end = k;
          break;
        }
      } else {
        gap++;
      }
    }
    while (end > from + 1 && !must[end - 1]) {
      end--;
    }
    out.u8(Format.PATCH + end - from - 1).number(table.columns[from], coding.columnBytes());
    for (int k = from; k < end; k++) {
      out.u8(row[k]);
    }
    return end;
  }

  /** Whether a FILL from here would save more than the new instruction costs. */
  private boolean longRepeatAt(int[] row, boolean[] must, int from, int run) {
    for (int pattern : PATTERNS) {
      int end = from + pattern;
      int needed = 0;
      while (end < run && row[end] == row[end - pattern]) {
        needed += must[end] ? 1 : 0;
        end++;
      }
      if (needed > 2 + coding.columnBytes() + 2) {
        return true;
      }
    }
    return false;
  }
}
