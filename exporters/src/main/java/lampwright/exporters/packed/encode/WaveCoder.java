package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.format.Format;
import org.jspecify.annotations.Nullable;

/** Codes a period of a lamp as closed curves that each column reads at its own phase. */
final class WaveCoder {
  /** Bytes of a wave's head before its groups, but for the phase at which it swings. */
  private static final int HEAD_BYTES = 5;

  private static final int SWING_BYTES = 2;

  private final LampTable table;
  private final Coding coding;
  private final EventCoder events;
  private final Echoes echoes;

  private final FoundWaves.OfLamp known;

  /** The frame of the lamp that is the table's first. */
  private final int first;

  /** A column that reads a curve at a phase. */
  private record Reader(int column, int phase, int wave) {}

  WaveCoder(
      LampTable table,
      int first,
      Echoes echoes,
      Coding coding,
      EventCoder events,
      FoundWaves.OfLamp known) {
    this.first = first;
    this.known = known;
    this.echoes = echoes;
    this.table = table;
    this.coding = coding;
    this.events = events;
  }

  /** The shortest way to play the frames, over and over or once; none if there is none. */
  List<Score> scores(int from, int to, int frames, List<FineGrid.Speed> speeds) {
    return known.waves(stretch(from, to, frames), () -> shortest(find(from, to, frames, speeds)));
  }

  private FoundWaves.Stretch stretch(int from, int to, int frames) {
    return new FoundWaves.Stretch(first + from, first + to, frames);
  }

  private List<Score> shortest(List<Score> scores) {
    return Score.shortest(scores, coding).map(List::of).orElse(List.of());
  }

  private List<Score> find(int from, int to, int frames, List<FineGrid.Speed> speeds) {
    int period = to - from;
    List<Score> found = new ArrayList<>();
    if (period < 2) {
      return found;
    }
    List<Integer> slots = new ArrayList<>();
    List<int[]> values = new ArrayList<>();
    for (int s = 0; s < table.slots.size(); s++) {
      int[] v = new int[period];
      boolean flat = true;
      for (int i = 0; i < period; i++) {
        v[i] = table.at(table.slots.get(s)[0], from + i);
        flat &= v[i] == v[0];
      }
      if (!flat) {
        slots.add(s);
        values.add(v);
      }
    }
    List<int[]> indices = slots.stream().map(table.slots::get).toList();
    // What rows take as they are, which can be had at any speed: of one period, where a section may
    // be so long that it repeats.
    long limit = (long) slots.size() * (period <= Format.MAX_BODY ? period : frames);
    for (Fit fit : WaveFinder.fits(values, indices, table.columns, speeds, limit)) {
      List<Score.Entry> entries = entries(fit, slots, from, frames, period);
      if (!entries.isEmpty()) {
        found.add(new Score(entries));
      }
    }
    return found;
  }

  /**
   * Entries that play the frames by curves found in one period. A curve that has not come round
   * after the period is begun anew before it goes wrong.
   */
  private List<Score.Entry> entries(
      Fit fit, List<Integer> slots, int from, int frames, int period) {
    int right = rightFrames(fit, slots, from, frames, period);
    int round = right < frames ? right / period * period : frames;
    List<Section> sections = new ArrayList<>();
    for (int start = 0; start < round; start += Format.MAX_ENTRY_FRAMES) {
      Section section = write(fit, slots, from, start);
      if (section == null) {
        return List.of();
      }
      sections.add(section);
    }
    List<Score.Entry> entries = new ArrayList<>();
    for (int begun = 0; begun < frames; begun += round) {
      int end = Math.min(round, frames - begun);
      for (int start = 0; start < end; start += Format.MAX_ENTRY_FRAMES) {
        int count = Math.min(Format.MAX_ENTRY_FRAMES, end - start);
        entries.add(new Score.Entry(count, sections.get(start / Format.MAX_ENTRY_FRAMES)));
      }
    }
    return entries;
  }

  /** For how many of the frames, at least one period, the curves give what the table has. */
  private int rightFrames(Fit fit, List<Integer> slots, int from, int frames, int period) {
    if ((long) fit.pace() * period % fit.size() == 0) {
      return frames;
    }
    for (int f = period; f < frames; f++) {
      for (int s = 0; s < slots.size(); s++) {
        if (fit.at(s, f) != table.at(table.slots.get(slots.get(s))[0], from + f)) {
          return f;
        }
      }
    }
    return frames;
  }

  /** The shortest way to play frames over and over as a light that runs to and fro, or none. */
  List<Score> sweeps(int from, int to, int frames) {
    return known.sweeps(stretch(from, to, frames), () -> shortest(findSweeps(from, to, frames)));
  }

  private List<Score> findSweeps(int from, int to, int frames) {
    List<Score> found = new ArrayList<>();
    List<Integer> slots = new ArrayList<>();
    for (int s = 0; s < table.slots.size(); s++) {
      slots.add(s);
    }
    SweepFinder ofTable = new SweepFinder(table, from, to);
    for (Fit fit : ofTable.swings()) {
      Section section = write(fit, slots, from, 0);
      if (section != null) {
        found.add(Score.of(frames, to - from, section));
      }
    }
    for (List<SweepFinder.Way> ways : ofTable.find()) {
      List<Section> sections = new ArrayList<>();
      for (SweepFinder.Way way : ways) {
        Section section = write(way.fit(), slots, way.from(), 0);
        if (section == null) {
          break;
        }
        sections.add(section);
      }
      List<Score.Entry> entries = new ArrayList<>();
      int left = sections.size() == ways.size() ? frames : 0;
      for (int i = 0; left > 0; i++) {
        SweepFinder.Way way = ways.get(i % ways.size());
        int length = Math.min(left, way.to() - way.from());
        entries.add(new Score.Entry(length, sections.get(i % ways.size())));
        left -= length;
      }
      if (!entries.isEmpty()) {
        found.add(new Score(entries));
      }
    }
    return found;
  }

  private @Nullable Section write(Fit fit, List<Integer> slots, int keyFrame, int start) {
    if (fit.waves().size() > Grouping.MAX_COUNT) {
      return null;
    }
    int size = fit.size();
    List<Wave> waves = fit.waves().stream().map(Wave::of).toList();
    List<Reader> readers = new ArrayList<>();
    for (int s = 0; s < slots.size(); s++) {
      int wave = fit.wave()[s];
      long phase = fit.phase()[s] + waves.get(wave).turn + (long) fit.pace() * start;
      readers.add(new Reader(echoes.column(slots.get(s)), (int) (phase % size), wave));
    }
    readers.sort(Comparator.comparingInt(Reader::wave).thenComparingInt(Reader::column));
    boolean swings = fit.swingsAt() != Fit.NEVER;
    int headBytes = HEAD_BYTES + (swings ? SWING_BYTES : 0);
    ByteSink taps = new ByteSink();
    List<Section.WaveRef> refs = new ArrayList<>();
    int count = 0;
    boolean fromFirst = true;
    List<Reader> left = new ArrayList<>(readers);
    while (!left.isEmpty() && count <= Grouping.MAX_COUNT) {
      List<Reader> run = longestRun(left, size);
      left.removeAll(new HashSet<>(run));
      Reader a = run.get(0);
      refs.add(new Section.WaveRef(headBytes + taps.size(), waves.get(a.wave()).bytes()));
      taps.number(0, coding.placeBytes());
      Grouping.runs(run.stream().map(Reader::column).toList()).get(0).write(taps, coding);
      taps.u16(a.phase());
      if (run.size() > 1) {
        taps.u16(Math.floorMod(run.get(1).phase() - a.phase(), size));
      }
      fromFirst &= a.phase() == waves.get(a.wave()).turn % size;
      count++;
    }
    // The player turns a group's steps round, not its phase: swinging fits only where all pixels of
    // a colour read its curve as one group from phase 0 on.
    if (count > Grouping.MAX_COUNT || (swings && !(fromFirst && count == waves.size()))) {
      return null;
    }
    ByteSink head = new ByteSink().u16(size).u16(fit.pace());
    if (swings) {
      head.u16(fit.swingsAt());
    }
    head.u8(count).all(taps.toBytes());
    try {
      echoes.write(head, coding, slots);
    } catch (TooManyPartsException notThisWay) {
      return null;
    }
    ByteSink out = new ByteSink();
    Format.writeKind(out, Format.WAVE | (swings ? Format.SWINGS : 0), head.size());
    int before = out.size();
    out.all(head.toBytes());
    events.writeKey(out, keyFrame, slots);
    out.u8(Format.GO);
    return new Section(
        out.toBytes(),
        refs.stream().map(r -> new Section.WaveRef(r.at() + before, r.wave())).toList());
  }

  /** The most readers, from the first left on, that are evenly spaced in place and phase. */
  private static List<Reader> longestRun(List<Reader> readers, int size) {
    Reader a = readers.get(0);
    List<Reader> best = List.of(a);
    for (int j = 1; j < readers.size(); j++) {
      Reader b = readers.get(j);
      int stride = b.column() - a.column();
      // They are in order of wave, then column.
      if (b.wave() != a.wave() || stride > Grouping.MAX_STRIDE) {
        break;
      }
      int step = Math.floorMod(b.phase() - a.phase(), size);
      List<Reader> run = new ArrayList<>(List.of(a));
      Reader last = a;
      for (int k = j; k < readers.size() && run.size() < Grouping.MAX_COUNT; k++) {
        Reader c = readers.get(k);
        if (c.wave() != a.wave() || c.column() - last.column() > stride) {
          break;
        }
        if (c.column() - last.column() == stride
            && Math.floorMod(c.phase() - last.phase(), size) == step) {
          run.add(c);
          last = c;
        }
      }
      if (run.size() > best.size()) {
        best = run;
      }
    }
    return best;
  }
}
