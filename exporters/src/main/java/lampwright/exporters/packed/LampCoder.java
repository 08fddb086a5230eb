package lampwright.exporters.packed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Finds the shortest score of one lamp in one scene among the ways to code it. */
final class LampCoder {
  /** Coding with the least work for the player. */
  static final int MOST_HASTE = 3;

  private final Coding coding;
  private final LampTable whole;
  private final boolean loop;
  private final List<FineGrid.Speed> speeds;
  private final int haste;

  /** Setup instructions: the columns that never change, where not 0. */
  final byte[] setup;

  LampCoder(LampTable whole, boolean loop, Coding coding, List<FineGrid.Speed> speeds, int haste) {
    this.haste = haste;
    this.loop = loop;
    this.speeds = speeds;
    this.coding = coding;
    this.whole = whole;
    ByteSink out = new ByteSink();
    boolean[] must = new boolean[whole.columns.length];
    boolean[] varying = new boolean[must.length];
    for (int[] slot : whole.slots) {
      for (int index : slot) {
        varying[index] = true;
      }
    }
    for (int i = 0; i < must.length; i++) {
      must[i] = !varying[i] && whole.at(i, 0) != 0;
    }
    new PatchCoder(whole, coding).write(out, whole.row(0), must);
    setup = out.toBytes();
  }

  /** The score; no entries if nothing ever changes. */
  Score score() {
    if (whole.slots.isEmpty()) {
      return new Score(List.of());
    }
    long[] hashes = whole.hashes();
    int round = loop ? Periods.dividing(hashes) : whole.frames;
    LampTable table = round < whole.frames ? whole.first(round) : whole;
    List<RowPlan> plans = new ArrayList<>();
    Echoes echoes = new Echoes(table);
    List<Integer> byColumn = order(table, echoes, false);
    List<Integer> brightFirst = order(table, echoes, true);
    plans.add(new RowPlan(table, echoes, byColumn));
    if (!brightFirst.equals(byColumn)) {
      plans.add(new RowPlan(table, echoes, brightFirst));
    }
    Score best = null;
    WaveCoder waves = null;
    for (RowPlan plan : plans) {
      StepsCoder steps = new StepsCoder(table, echoes, plan, coding);
      if (waves == null) {
        waves = new WaveCoder(table, echoes, coding, steps);
      }
      Stretches stretches = new Stretches(table, steps, waves, plan, coding, speeds, haste);
      for (Score score : stretches.scores()) {
        if (best == null || score.size(coding) < best.size(coding)) {
          best = score;
        }
      }
    }
    return best;
  }

  private static List<Integer> order(LampTable table, Echoes echoes, boolean brightFirst) {
    List<Integer> order = new ArrayList<>();
    double[] mean = new double[table.slots.size()];
    for (int s = 0; s < mean.length; s++) {
      for (int f = 0; f < table.frames; f++) {
        mean[s] += table.at(table.slots.get(s)[0], f);
      }
      order.add(s);
    }
    Comparator<Integer> byColumn = Comparator.comparingInt(echoes::column);
    if (brightFirst) {
      order.sort(
          Comparator.comparingInt((Integer s) -> echoes.column(s) / 12)
              .thenComparingDouble(s -> -mean[s])
              .thenComparing(byColumn));
    } else {
      order.sort(byColumn);
    }
    return order;
  }
}
