package lampwright.exporters.packed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;

/** Cuts frames that don't repeat into sections. */
final class Cuts {
  // Frames between which cuts are tried: few where a look costs much.
  private static final int FINE_GRID = 2;
  private static final int GRID = 4;
  private static final int COARSE_GRID = 8;
  private static final int FEW_SLOTS = 2;
  private static final int SOME_SLOTS = 8;
  private static final int LONGEST = 512;
  private static final int HOLD = 12;

  /** Bytes of an entry and a plain section beside its rows. */
  private static final int PLAIN_HEAD = 6;

  // Cycles of an ATmega328P, by measurement of the player, for the cap on slow rows.
  private static final int ROW_CYCLES = 100;
  private static final int SLOT_CYCLES = 28;
  private static final int BIT_CYCLES = 7;
  private static final int COPY_CYCLES = 11;
  private static final int CAP_PER_COLUMN = 40;
  private static final int CAP_BESIDE = 240;

  /** Share of the cap by haste. */
  private static final double[] CAP_SHARE = {1, 0.6, 0, 0};

  private final LampTable table;
  private final RowPlan plan;
  private final StepsCoder steps;
  private final Coding coding;
  private final int grid;
  private final int haste;

  Cuts(LampTable table, RowPlan plan, StepsCoder steps, Coding coding, int haste) {
    this.haste = haste;
    this.table = table;
    this.plan = plan;
    this.steps = steps;
    this.coding = coding;
    int slots = table.slots.size();
    grid = slots <= FEW_SLOTS ? FINE_GRID : slots <= SOME_SLOTS ? GRID : COARSE_GRID;
  }

  /** The ways to code frames as one section. */
  List<Section> ways(int from, int to) {
    List<Section> ways = new ArrayList<>();
    ways.add(steps.events(from, to));
    if (fastEnough(from, to)) {
      add(ways, () -> steps.rows(from, to, false));
      add(ways, () -> steps.rows(from, to, true));
    }
    add(ways, () -> steps.raw(from, to));
    return ways;
  }

  // A wide lamp may have more runs than a row section can list; events list none.
  private static void add(List<Section> ways, Supplier<Section> way) {
    try {
      ways.add(way.get());
    } catch (TooManyPartsException notThisWay) {
      // the others remain
    }
  }

  /** The shortest way to play frames once. */
  private Section best(int from, int to) {
    List<Section> once = ways(from, to);
    if (PlainCoder.suits(table)) {
      once.add(PlainCoder.section(table, from, to));
    }
    Section best = null;
    for (Section way : once) {
      if (best == null || way.bytes().length < best.bytes().length) {
        best = way;
      }
    }
    return best;
  }

  private boolean fastEnough(int from, int to) {
    Range range = new Range(plan.slots.size());
    range.take(from + 1, to);
    return range.cycles() <= cap();
  }

  private int cap() {
    return (int) ((CAP_PER_COLUMN * table.columns.length + CAP_BESIDE) * CAP_SHARE[haste]);
  }

  /** Splits where many small sections come out equal: at the ends of holds. */
  List<Score.Entry> sectionsAtHolds(int from, int to) {
    List<Score.Entry> entries = new ArrayList<>();
    int start = from;
    int f = from;
    while (f < to) {
      int end = f + 1;
      while (end < to && still(end)) {
        end++;
      }
      if (end - f >= HOLD) {
        if (f > start) {
          entries.addAll(sections(start, f));
        }
        for (int g = f; g < end; g += Format.MAX_ENTRY_FRAMES) {
          // One frame of hold serves every length: the section rests on its last frame.
          entries.add(new Score.Entry(Math.min(Format.MAX_ENTRY_FRAMES, end - g), steps.rest(f)));
        }
        start = end;
      }
      f = end;
    }
    if (start < to) {
      entries.addAll(sections(start, to));
    }
    return entries;
  }

  private boolean still(int frame) {
    for (int s = 0; s < table.slots.size(); s++) {
      if (table.changed(s, frame)) {
        return false;
      }
    }
    return true;
  }

  /** Cuts anywhere on a grid by dynamic programming on estimated sizes. */
  List<Score.Entry> sections(int from, int to) {
    if (from >= to) {
      return List.of();
    }
    int points = (to - from + grid - 1) / grid;
    double[] least = new double[points + 1];
    int[] back = new int[points + 1];
    Arrays.fill(least, Double.MAX_VALUE);
    least[0] = 0;
    double[] eventBytes = eventBytes(from, to);
    int[] changedRows = changedRows(from, to);
    boolean plain = PlainCoder.suits(table);
    ByteSink key = new ByteSink();
    for (int a = 0; a < points; a++) {
      int start = from + a * grid;
      key = new ByteSink();
      steps.writeKey(key, start);
      // The entry, the section's kind and skip, AGAIN.
      double fixed = 2 + coding.placeBytes() + 2 + key.size() + 1;
      Range range = new Range(plan.slots.size());
      for (int b = a + 1; b <= points && b - a <= LONGEST / grid; b++) {
        int gridStart = from + (b - 1) * grid;
        int end = Math.min(to, from + b * grid);
        range.take(b == a + 1 ? gridStart + 1 : gridStart, end);
        int rows = end - start - 1;
        int changed = changedRows[end - from] - changedRows[start + 1 - from];
        double cost = fixed + eventBytes[end - from] - eventBytes[start + 1 - from] + 1;
        double raw = fixed + 6 + (double) range.slots() * rows;
        cost = Math.min(cost, raw);
        if (plain) {
          cost = Math.min(cost, PLAIN_HEAD + (double) table.columns.length * (end - start));
        }
        if (range.cycles() <= cap()) {
          double head = fixed + range.headBytes(coding) + 5 + rows / 128.0;
          cost = Math.min(cost, head + range.bits() * (double) rows / 8);
          cost = Math.min(cost, head + (rows + range.bits() * (double) changed) / 8);
        }
        if (least[a] + cost < least[b]) {
          least[b] = least[a] + cost;
          back[b] = a;
        }
      }
    }
    List<Score.Entry> entries = new ArrayList<>();
    for (int b = points; b > 0; b = back[b]) {
      int start = from + back[b] * grid;
      int end = Math.min(to, from + b * grid);
      entries.add(0, new Score.Entry(end - start, best(start, end)));
    }
    return entries;
  }

  /** Running sum of what patches for each change would cost; [k] is of frames before from + k. */
  private double[] eventBytes(int from, int to) {
    double[] sum = new double[to - from + 1];
    for (int f = from; f < to; f++) {
      int changed = 0;
      int runs = 0;
      if (f > 0) {
        int last = -10;
        for (int i = 0; i < table.columns.length; i++) {
          if (table.at(i, f) != table.at(i, f - 1)) {
            changed++;
            runs += i - last > 3 ? 1 : 0;
            last = i;
          }
        }
      }
      double cost = runs == 0 ? 0 : 1 + changed + runs * (1.0 + coding.columnBytes());
      sum[f - from + 1] = sum[f - from] + cost;
    }
    return sum;
  }

  private int[] changedRows(int from, int to) {
    int[] sum = new int[to - from + 1];
    for (int f = from; f < to; f++) {
      sum[f - from + 1] = sum[f - from] + (f > 0 && !still(f) ? 1 : 0);
    }
    return sum;
  }

  /** Least and most of every remainder over the frames taken so far. */
  private final class Range {
    private final int[][] least;
    private final int[][] most;

    Range(int slots) {
      least = new int[slots][RowPlan.PREDICTORS];
      most = new int[slots][RowPlan.PREDICTORS];
      for (int i = 0; i < slots; i++) {
        Arrays.fill(least[i], Integer.MAX_VALUE);
        Arrays.fill(most[i], Integer.MIN_VALUE);
      }
    }

    void take(int from, int to) {
      for (int i = 0; i < least.length; i++) {
        for (int p = 0; p < RowPlan.PREDICTORS; p++) {
          int[] rest = plan.rest[i][p];
          for (int f = from; rest != null && f < to; f++) {
            least[i][p] = Math.min(least[i][p], rest[f]);
            most[i][p] = Math.max(most[i][p], rest[f]);
          }
        }
      }
    }

    private boolean moves(int i) {
      return least[i][1] < 0 || most[i][1] > 0;
    }

    private int predictor(int i) {
      int best = 0;
      int width = 99;
      for (int p = 0; p < RowPlan.PREDICTORS; p++) {
        if (plan.rest[i][p] != null && least[i][p] <= most[i][p]) {
          int w = RowPlan.width(least[i][p], most[i][p]);
          if (w < width) {
            width = w;
            best = p;
          }
        }
      }
      return best;
    }

    int slots() {
      int count = 0;
      for (int i = 0; i < least.length; i++) {
        count += moves(i) ? 1 : 0;
      }
      return count;
    }

    int bits() {
      int bits = 0;
      for (int i = 0; i < least.length; i++) {
        if (moves(i)) {
          int p = predictor(i);
          bits += RowPlan.width(least[i][p], most[i][p]);
        }
      }
      return bits;
    }

    double headBytes(Coding coding) {
      double bytes = 0;
      for (int i = 0; i < least.length; i++) {
        if (moves(i)) {
          bytes += predictor(i) == 2 ? 3 + coding.columnBytes() : 2;
          bytes += i == 0 || !moves(i - 1) ? 3 : 0.3;
        }
      }
      return bytes;
    }

    int cycles() {
      int cycles = ROW_CYCLES;
      for (int i = 0; i < least.length; i++) {
        if (moves(i)) {
          int p = predictor(i);
          cycles += SLOT_CYCLES + (table.slots.get(plan.slots.get(i)).length - 1) * COPY_CYCLES;
          cycles += BIT_CYCLES * RowPlan.width(least[i][p], most[i][p]);
        }
      }
      return cycles;
    }
  }
}
