package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.play.DecodeCost;

/** Finds the shortest score of one lamp in one scene among the ways to code it. */
final class LampCoder {
  /** Coding with the least work for the player. */
  static final int MAX_SPEED_LEVEL = 3;

  /**
   * How to code.
   *
   * @param coding widths of numbers
   * @param speeds speeds at which lights may turn
   * @param speedLevel 0 for the shortest code, up to {@link #MAX_SPEED_LEVEL} for quicker ones
   * @param cost what the player takes
   */
  record Options(Coding coding, List<FineGrid.Speed> speeds, int speedLevel, DecodeCost cost) {
    Options {
      speeds = List.copyOf(speeds);
    }
  }

  /**
   * Columns in which the order goes by brightness: three RGBW or four RGB pixels, so that a slot's
   * source is near it. Found by trial: with 3 the corpus packs to 75,052 bytes in place of 72,069.
   */
  private static final int ORDER_COLUMNS = 12;

  private final LampTable whole;
  private final boolean loop;
  private final Options options;

  LampCoder(LampTable whole, boolean loop, Options options) {
    this.whole = whole;
    this.loop = loop;
    this.options = options;
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
    Coding coding = options.coding();
    EventCoder events = new EventCoder(table, coding);
    // The lamp is coded in more than one order, which waves don't mind.
    WaveCoder waves = new WaveCoder(table, echoes, coding, events);
    for (RowPlan plan : plans) {
      StepsCoder steps = new StepsCoder(table, echoes, plan, events, coding);
      RepeatFinder finder = new RepeatFinder(table, steps, events, waves, plan, options);
      for (Score score : finder.scores()) {
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
          Comparator.comparingInt((Integer s) -> echoes.column(s) / ORDER_COLUMNS)
              .thenComparingDouble(s -> -mean[s])
              .thenComparing(byColumn));
    } else {
      order.sort(byColumn);
    }
    return order;
  }
}
