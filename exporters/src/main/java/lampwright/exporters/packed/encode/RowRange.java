package lampwright.exporters.packed.encode;

import java.util.Arrays;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.play.DecodeCost;

/** What rows over some frames would take, which grow one after another: bits, bytes and cycles. */
final class RowRange {
  /** A rule is a predictor with its width, and a bias. */
  private static final int RULE_BYTES = 2;

  /** A run is a first column, a stride and a count. */
  private static final int RUN_BYTES = 3;

  /**
   * A slot beside the one before it goes on with its run, mostly. Found by trial: with 0 the corpus
   * packs to 72,086 bytes in place of 72,069, with 1 to 72,021.
   */
  private static final double SHARED_RUN_BYTES = 0.3;

  private final int columnBytes;
  private final DecodeCost.RowCost cost;

  /** Cycles of each slot, beside its bits. */
  private final int[] slotCycles;

  private final Span taken;

  private int slots;
  private int bits;
  private int cycles;
  private double headBytes;

  /** Least and most of every remainder over some frames, predictor by predictor, then by slot. */
  static final class Span {
    private final int[] least;
    private final int[] most;

    private Span(int size) {
      least = new int[size];
      most = new int[size];
      Arrays.fill(least, Integer.MAX_VALUE);
      Arrays.fill(most, Integer.MIN_VALUE);
    }

    private void widen(Span other, int from, int to) {
      for (int i = from; i < to; i++) {
        least[i] = Math.min(least[i], other.least[i]);
        most[i] = Math.max(most[i], other.most[i]);
      }
    }
  }

  RowRange(LampTable table, RowPlan plan, Coding coding, DecodeCost.RowCost cost) {
    this.cost = cost;
    columnBytes = coding.columnBytes();
    taken = new Span(plan.slots.size() * RowPlan.PREDICTORS);
    slotCycles = new int[plan.slots.size()];
    for (int i = 0; i < slotCycles.length; i++) {
      int copies = table.slots.get(plan.slots.get(i)).length - 1;
      slotCycles[i] = cost.slot() + copies * cost.copy();
    }
    cycles = cost.row();
  }

  /**
   * What frames need, to be taken in more than once; of a plan that is not for rows, no more than
   * which slots change.
   */
  static Span span(RowPlan plan, int from, int to) {
    int n = plan.slots.size();
    Span span = new Span(n * RowPlan.PREDICTORS);
    for (int p = 0; p < RowPlan.PREDICTORS; p++) {
      for (int i = 0; i < n; i++) {
        short[] rest = plan.rest[i][p];
        if (rest != null && (p == RowPlan.STEP || plan.forRows)) {
          int low = Integer.MAX_VALUE;
          int high = Integer.MIN_VALUE;
          for (int f = from; f < to; f++) {
            low = Math.min(low, rest[f]);
            high = Math.max(high, rest[f]);
          }
          span.least[p * n + i] = low;
          span.most[p * n + i] = high;
        }
      }
    }
    return span;
  }

  /** Takes in frames; the values below are of all taken so far. */
  void take(Span span) {
    taken.widen(span, 0, taken.least.length);
    int n = slotCycles.length;
    slots = 0;
    bits = 0;
    cycles = cost.row();
    headBytes = 0;
    boolean before = false;
    for (int i = 0; i < n; i++) {
      boolean moves = taken.least[n + i] < 0 || taken.most[n + i] > 0;
      if (moves) {
        add(i, before);
      }
      before = moves;
    }
  }

  /** Takes in frames, and finds out no more of them than how many slots change. */
  void takeSlots(Span span) {
    int n = slotCycles.length;
    taken.widen(span, n, 2 * n);
    slots = 0;
    for (int i = n; i < 2 * n; i++) {
      slots += taken.least[i] < 0 || taken.most[i] > 0 ? 1 : 0;
    }
  }

  private void add(int slot, boolean before) {
    int predictor = 0;
    int width = Integer.MAX_VALUE;
    int n = slotCycles.length;
    for (int p = 0; p < RowPlan.PREDICTORS; p++) {
      int least = taken.least[p * n + slot];
      int most = taken.most[p * n + slot];
      if (least <= most) {
        int own = RowPlan.width(least, most);
        if (own < width) {
          width = own;
          predictor = p;
        }
      }
    }
    slots++;
    bits += width;
    cycles += slotCycles[slot] + cost.bit() * width;
    headBytes += predictor == 2 ? RULE_BYTES + 1 + columnBytes : RULE_BYTES;
    headBytes += before ? SHARED_RUN_BYTES : RUN_BYTES;
  }

  /** Slots that change. */
  int slots() {
    return slots;
  }

  /** Bits of a row. */
  int bits() {
    return bits;
  }

  /** What a row takes, about. */
  int cycles() {
    return cycles;
  }

  /** Bytes of the rules and runs, about. */
  double headBytes() {
    return headBytes;
  }
}
