package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.format.Format;

/** Cuts frames that don't repeat into sections. */
final class Segmenter {
  // Frames between which cuts are tried: few where a look costs much. Found by trial: with one of
  // them halved or doubled the corpus packs to 72,067 to 72,608 bytes in place of 72,069.
  private static final int FINE_GRID = 2;
  private static final int GRID = 4;
  private static final int COARSE_GRID = 8;
  private static final int FEW_SLOTS = 2;
  private static final int SOME_SLOTS = 8;

  /**
   * Most frames of a section among which cuts are looked for; the work grows with it. Found by
   * trial: with 256 the corpus packs to 72,911 bytes, with 1,024 to 71,727.
   */
  private static final int LONGEST = 512;

  /**
   * Frames of hold at which a section ends in any case. Found by trial: with 6 the corpus packs to
   * 72,146 bytes, with 24 to 72,058.
   */
  private static final int HOLD = 12;

  /** Bytes of an entry and a plain section beside its rows. */
  private static final int PLAIN_HEAD = 6;

  /** Time that a byte takes on the wire: 8 bits of 1.25 us (WS2812B datasheet). */
  private static final double BYTE_MICROS = 10;

  /** More of it than a lamp's bytes take, for what a row costs beside them: found by trial. */
  private static final double BESIDE_MICROS = 60;

  /** Share of the wire's time that rows may take. */
  private static final double WIRE_SHARE = 0.25;

  /** Share of the cap by speedLevel. */
  private static final double[] CAP_SHARE = {1, 0.6, 0, 0};

  private final LampTable table;
  private final RowPlan plan;
  private final StepsCoder steps;
  private final EventCoder events;
  private final Coding coding;
  private final LampCoder.Options options;
  private final int grid;

  /** Cuts made before: where nothing holds, all ways of cutting come to the same. */
  private final Map<List<Integer>, List<Score.Entry>> known = new HashMap<>();

  Segmenter(
      LampTable table,
      RowPlan plan,
      StepsCoder steps,
      EventCoder events,
      LampCoder.Options options) {
    this.events = events;
    this.options = options;
    this.table = table;
    this.plan = plan;
    this.steps = steps;
    coding = options.coding();
    int slots = table.slots.size();
    grid = slots <= FEW_SLOTS ? FINE_GRID : slots <= SOME_SLOTS ? GRID : COARSE_GRID;
  }

  /** The ways to code frames as one section. */
  List<Section> codings(int from, int to) {
    List<Section> ways = new ArrayList<>();
    ways.add(events.section(from, to));
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
    List<Section> once = codings(from, to);
    if (PlainCoder.suits(table)) {
      once.add(PlainCoder.section(table, from, to));
    }
    Section best = null;
    for (Section way : once) {
      if (best == null || way.length() < best.length()) {
        best = way;
      }
    }
    return best;
  }

  /** Whether rows of bits are ever quick enough at a speed level. */
  static boolean allowsRows(int speedLevel) {
    return CAP_SHARE[speedLevel] > 0;
  }

  private boolean fastEnough(int from, int to) {
    if (!plan.forRows) {
      return false;
    }
    RowRange range = new RowRange(table, plan, coding, options.cost().row());
    range.take(RowRange.span(plan, from + 1, to));
    return range.cycles() <= cap();
  }

  private int cap() {
    double micros = BYTE_MICROS * table.columns.length + BESIDE_MICROS;
    return (int)
        (micros * options.cost().megahertz() * WIRE_SHARE * CAP_SHARE[options.speedLevel()]);
  }

  /** Splits where many small sections come out equal: at the ends of holds. */
  List<Score.Entry> sectionsAtHolds(int from, int to) {
    List<Score.Entry> entries = new ArrayList<>();
    int start = from;
    int f = from;
    while (f < to) {
      int end = f + 1;
      while (end < to && table.still(end)) {
        end++;
      }
      if (end - f >= HOLD) {
        if (f > start) {
          entries.addAll(sections(start, f));
        }
        for (int g = f; g < end; g += Format.MAX_ENTRY_FRAMES) {
          // One frame of hold serves every length: the section rests on its last frame.
          entries.add(new Score.Entry(Math.min(Format.MAX_ENTRY_FRAMES, end - g), events.rest(f)));
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

  /** Segmenter anywhere on a grid by dynamic programming on estimated sizes. */
  List<Score.Entry> sections(int from, int to) {
    return from >= to ? List.of() : known.computeIfAbsent(List.of(from, to), k -> cut(from, to));
  }

  private List<Score.Entry> cut(int from, int to) {
    int points = (to - from + grid - 1) / grid;
    int cap = cap();
    double[] least = new double[points + 1];
    int[] back = new int[points + 1];
    Arrays.fill(least, Double.MAX_VALUE);
    least[0] = 0;
    double[] eventBytes = eventBytes(from, to);
    int[] changedRows = changedRows(from, to);
    boolean plain = PlainCoder.suits(table);
    RowRange.Span[] spans = new RowRange.Span[points + 1];
    for (int a = 0; a < points; a++) {
      int start = from + a * grid;
      ByteSink key = new ByteSink();
      events.writeKey(key, start);
      // The entry, the section's kind and skip, AGAIN.
      double fixed = 2 + coding.placeBytes() + 2 + key.size() + 1;
      RowRange range = new RowRange(table, plan, coding, options.cost().row());
      for (int b = a + 1; b <= points && b - a <= LONGEST / grid; b++) {
        int end = Math.min(to, from + b * grid);
        if (b == a + 1) {
          take(range, RowRange.span(plan, start + 1, end), cap);
          spans[b] = null;
        } else {
          if (spans[b] == null) {
            spans[b] = RowRange.span(plan, from + (b - 1) * grid, end);
          }
          take(range, spans[b], cap);
        }
        int rows = end - start - 1;
        int changed = changedRows[end - from] - changedRows[start + 1 - from];
        double cost = fixed + eventBytes[end - from] - eventBytes[start + 1 - from] + 1;
        double raw = fixed + 6 + (double) range.slots() * rows;
        cost = Math.min(cost, raw);
        if (plain) {
          cost = Math.min(cost, PLAIN_HEAD + (double) table.columns.length * (end - start));
        }
        if (plan.forRows && range.cycles() <= cap) {
          double head = fixed + range.headBytes() + 5 + rows / 128.0;
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
      entries.add(new Score.Entry(end - start, best(start, end)));
    }
    Collections.reverse(entries);
    return entries;
  }

  private void take(RowRange range, RowRange.Span span, int cap) {
    // More frames never take fewer cycles.
    if (plan.forRows && range.cycles() <= cap) {
      range.take(span);
    } else {
      range.takeSlots(span);
    }
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
      sum[f - from + 1] = sum[f - from] + (f > 0 && !table.still(f) ? 1 : 0);
    }
    return sum;
  }
}
