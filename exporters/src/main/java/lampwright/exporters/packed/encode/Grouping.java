package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.List;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Coding;

/** Evenly spaced columns: runs of slots, and echoes that give columns the value of others. */
final class Grouping {
  /** Columns at an even stride. */
  record Run(int first, int slots, int stride) {
    void write(ByteSink out, Coding coding) {
      out.number(first, coding.columnBytes()).u8(slots);
      if (slots != 1) {
        out.u8(stride);
      }
    }
  }

  /** Columns that take over, one after another, what the source columns have by then. */
  record Echo(int first, int source, int count, int stride) {
    void write(ByteSink out, Coding coding) {
      out.number(first, coding.columnBytes()).number(source, coding.columnBytes());
      out.u8(count);
      if (count != 1) {
        out.u8(stride);
      }
    }
  }

  /** Most columns of a run or echo: its count is a byte. */
  static final int MAX_COUNT = 255;

  /** Widest stride: it is a signed byte. */
  static final int MAX_STRIDE = 127;

  private Grouping() {}

  /** Runs of columns, keeping their order. */
  static List<Run> runs(List<Integer> columns) {
    List<Run> runs = new ArrayList<>();
    int i = 0;
    while (i < columns.size()) {
      int end = i + 1;
      int stride = 0;
      while (end < columns.size() && end - i < MAX_COUNT) {
        int step = columns.get(end) - columns.get(end - 1);
        if (Math.abs(step) > MAX_STRIDE || (end > i + 1 && step != stride)) {
          break;
        }
        stride = step;
        end++;
      }
      runs.add(new Run(columns.get(i), end - i, stride));
      i = end;
    }
    return runs;
  }

  /** Echoes that spread the first of some equal columns to the others. */
  static List<Echo> spread(int[] columns) {
    List<Echo> echoes = new ArrayList<>();
    boolean[] done = new boolean[columns.length];
    done[0] = true;
    int i = 0;
    while (i < columns.length) {
      if (i > 0 && done[i]) {
        i++;
        continue;
      }
      List<Integer> best = List.of(i);
      for (int j = i + 1; j < columns.length && columns[j] - columns[i] <= MAX_STRIDE; j++) {
        List<Integer> run = even(columns, done, i, columns[j] - columns[i]);
        if (run.size() > best.size()) {
          best = run;
        }
      }
      if (i > 0) {
        echoes.add(new Echo(columns[i], columns[0], 1, 0));
      }
      if (best.size() > 1) {
        int stride = columns[best.get(1)] - columns[i];
        echoes.add(new Echo(columns[i] + stride, columns[i], best.size() - 1, stride));
      }
      for (int k : best) {
        done[k] = true;
      }
      i++;
    }
    return echoes;
  }

  private static List<Integer> even(int[] columns, boolean[] done, int from, int stride) {
    List<Integer> run = new ArrayList<>(List.of(from));
    int want = columns[from] + stride;
    for (int k = from + 1; k < columns.length && run.size() < MAX_COUNT; k++) {
      if (columns[k] == want && !done[k]) {
        run.add(k);
        want += stride;
      }
    }
    return run;
  }
}
