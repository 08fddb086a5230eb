package lampwright.exporters.packed.encode;

import com.google.common.primitives.ImmutableIntArray;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.format.Format;
import lampwright.exporters.packed.play.DecodeCost;

/** Finds the shortest score of one lamp in one scene among the ways to code it. */
final class LampCoder {
  /**
   * How to code.
   *
   * @param coding widths of numbers
   * @param speeds speeds at which lights may turn
   * @param speedLevel as in {@link SpeedLevels}
   * @param cost what the player takes
   * @param givesUp whether to throw a {@link PlacesTooShortException} as soon as it is known that
   *     places will not reach
   */
  record Options(
      Coding coding,
      List<FineGrid.Speed> speeds,
      int speedLevel,
      DecodeCost cost,
      boolean givesUp) {
    Options {
      speeds = List.copyOf(speeds);
    }

    Options at(int level) {
      return new Options(coding, speeds, level, cost, givesUp);
    }
  }

  /**
   * Columns in which the order goes by brightness: three RGBW or four RGB pixels, so that a slot's
   * source is near it. Found by trial: with 3 the corpus packs to 75,052 bytes in place of 72,069.
   */
  private static final int ORDER_COLUMNS = 12;

  /** Fewer frames than that are not cut off at a border: a section has a head. */
  private static final int LEAST_FRAMES = 4;

  /**
   * Cues, and values of all frames, from which on a lamp is not tried in one piece any more. Found
   * by trial: it takes two fifths of the time for such lamps, and no show of the benchmark is a
   * byte shorter with it.
   */
  private static final int MANY_CUES = 4;

  private static final int MANY_VALUES = 65_536;

  private final LampTable whole;
  private final int round;
  private final List<Integer> cues;
  private final CueBorders borders;
  private final FoundWaves.OfLamp found;
  private final Options options;

  /**
   * @param found what is known of the lamp's curves, in which more is put down
   */
  LampCoder(
      LampTable whole, boolean loop, CueBorders borders, Options options, FoundWaves.OfLamp found) {
    this.found = found;
    this.whole = whole;
    this.borders = borders;
    this.options = options;
    round = loop && !whole.slots.isEmpty() ? Periods.dividing(whole.hashes()) : whole.frames;
    cues = within(borders.cues(), 0, round);
  }

  /** Where the cues begin, which are coded each for itself, and where the last ends. */
  ImmutableIntArray pieces() {
    return ImmutableIntArray.builder().add(0).addAll(cues).add(round).build();
  }

  /**
   * The score; no entries if nothing ever changes.
   *
   * @param levels of {@link #pieces}
   */
  Score score(SpeedLevels levels) {
    if (whole.slots.isEmpty()) {
      return new Score(List.of());
    }
    LampTable table = round < whole.frames ? whole.part(0, round) : whole;
    boolean[] varying = whole.varying();
    List<Score> ways = new ArrayList<>();
    if (cues.size() < MANY_CUES || (long) round * table.slots.size() < MANY_VALUES) {
      ways.add(uncut(table, 0, round, varying, levels.most()));
      if (within(borders.fades(), 0, round).isEmpty()) {
        return ways.get(0);
      }
    }
    List<Score.Entry> entries = new ArrayList<>();
    ImmutableIntArray pieces = pieces();
    for (int i = 0; i + 1 < pieces.length(); i++) {
      Score cue = cue(table, pieces.get(i), pieces.get(i + 1), varying, levels.at(i));
      entries.addAll(cue.entries());
      // Once in a while: to add up a long score takes time.
      if (options.givesUp() && Integer.bitCount(i + 1) == 1) {
        giveUpIfTooLong(ways, new Score(entries));
      }
    }
    ways.add(new Score(entries));
    return Score.shortest(ways, options.coding()).orElseThrow();
  }

  private void giveUpIfTooLong(List<Score> others, Score begun) {
    int most = Format.maxSize(options.coding().placeBytes());
    if (others.stream().allMatch(score -> score.size(options.coding()) > most)
        && begun.size(options.coding()) > most) {
      throw new PlacesTooShortException();
    }
  }

  /** Borders between two frames that leave a few frames on either side. */
  private static List<Integer> within(List<Integer> borders, int from, int to) {
    List<Integer> within = new ArrayList<>();
    int last = from;
    // Of a long show most borders are those of other cues.
    int first = Collections.binarySearch(borders, from + LEAST_FRAMES);
    for (int i = first < 0 ? -first - 1 : first; i < borders.size(); i++) {
      int border = borders.get(i);
      if (border > to - LEAST_FRAMES) {
        break;
      }
      if (border >= last + LEAST_FRAMES) {
        within.add(border);
        last = border;
      }
    }
    return within;
  }

  private Score cue(LampTable table, int from, int to, boolean[] varying, int level) {
    Score whole = uncut(table, from, to, varying, level);
    List<Integer> fades = within(borders.fades(), from, to);
    if (fades.isEmpty()) {
      return whole;
    }
    List<Score.Entry> entries = new ArrayList<>();
    int start = from;
    for (int i = 0; i <= fades.size(); i++) {
      int end = i < fades.size() ? fades.get(i) : to;
      entries.addAll(uncut(table, start, end, varying, level).entries());
      start = end;
    }
    return Score.shortest(List.of(whole, new Score(entries)), options.coding()).orElseThrow();
  }

  /**
   * The shortest score of a part that is found without a look at the borders.
   *
   * @param varying which columns change in the lamp's other parts too
   */
  private Score uncut(LampTable lamp, int from, int to, boolean[] varying, int level) {
    return found.coded(
        new FoundWaves.Coded(from, to, level),
        () -> {
          boolean all = from == 0 && to == lamp.frames;
          return code(all ? lamp : lamp.part(from, to), from, varying, options.at(level));
        });
  }

  private Score code(LampTable table, int first, boolean[] varying, Options options) {
    Coding coding = options.coding();
    EventCoder events = new EventCoder(table, coding, varying);
    if (table.slots.isEmpty()) {
      return new Score(events.still());
    }
    List<RowPlan> plans = new ArrayList<>();
    Echoes echoes = new Echoes(table);
    List<Integer> byColumn = order(table, echoes, false);
    List<Integer> brightFirst = order(table, echoes, true);
    boolean rows = Segmenter.allowsRows(options.speedLevel());
    plans.add(new RowPlan(table, echoes, byColumn, rows));
    if (!brightFirst.equals(byColumn)) {
      plans.add(new RowPlan(table, echoes, brightFirst, rows));
    }
    // The lamp is coded in more than one order, which waves don't mind.
    WaveCoder waves = new WaveCoder(table, first, echoes, coding, events, found);
    List<Score> scores = new ArrayList<>();
    for (RowPlan plan : plans) {
      StepsCoder steps = new StepsCoder(table, echoes, plan, events, coding);
      RepeatFinder finder = new RepeatFinder(table, steps, events, waves, plan, options);
      Score.shortest(finder.scores(), coding).ifPresent(scores::add);
    }
    return Score.shortest(scores, coding).orElseThrow();
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
