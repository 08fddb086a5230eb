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

  private final LampTable table;
  private final RowPlan plan;
  private final int columnBytes;
  private final DecodeCost.RowCost cost;

  /** Least and most of every remainder, by slot and predictor. */
  private final int[][] least;

  private final int[][] most;

  private int slots;
  private int bits;
  private int cycles;
  private double headBytes;

  RowRange(LampTable table, RowPlan plan, Coding coding, DecodeCost.RowCost cost) {
    this.cost = cost;
    this.table = table;
    this.plan = plan;
    columnBytes = coding.columnBytes();
    least = new int[plan.slots.size()][RowPlan.PREDICTORS];
    most = new int[least.length][RowPlan.PREDICTORS];
    for (int i = 0; i < least.length; i++) {
      Arrays.fill(least[i], Integer.MAX_VALUE);
      Arrays.fill(most[i], Integer.MIN_VALUE);
    }
    cycles = cost.row();
  }

  /** Takes in frames; the values below are of all taken so far. */
  void take(int from, int to) {
    slots = 0;
    bits = 0;
    cycles = cost.row();
    headBytes = 0;
    boolean before = false;
    for (int i = 0; i < least.length; i++) {
      widen(i, from, to);
      boolean moves = least[i][1] < 0 || most[i][1] > 0;
      if (moves) {
        add(i, before);
      }
      before = moves;
    }
  }

  private void widen(int slot, int from, int to) {
    for (int p = 0; p < RowPlan.PREDICTORS; p++) {
      int[] rest = plan.rest[slot][p];
      if (rest != null) {
        int low = least[slot][p];
        int high = most[slot][p];
        for (int f = from; f < to; f++) {
          low = Math.min(low, rest[f]);
          high = Math.max(high, rest[f]);
        }
        least[slot][p] = low;
        most[slot][p] = high;
      }
    }
  }

  private void add(int slot, boolean before) {
    int predictor = 0;
    int width = Integer.MAX_VALUE;
    for (int p = 0; p < RowPlan.PREDICTORS; p++) {
      if (least[slot][p] <= most[slot][p]) {
        int own = RowPlan.width(least[slot][p], most[slot][p]);
        if (own < width) {
          width = own;
          predictor = p;
        }
      }
    }
    slots++;
    bits += width;
    int copies = table.slots.get(plan.slots.get(slot)).length - 1;
    cycles += cost.slot() + copies * cost.copy() + cost.bit() * width;
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
