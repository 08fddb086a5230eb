package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.exporters.packed.format.Format;

/** Makes scores of a lamp: stretches that repeat as one section, the rest cut where it is best. */
final class RepeatFinder {
  private final LampTable table;
  private final WaveCoder waves;
  private final Segmenter segmenter;
  private final long[] hashes;
  private final LampCoder.Options options;
  private final Map<FoundWaves.Stretch, Optional<Score>> known = new HashMap<>();

  RepeatFinder(
      LampTable table,
      StepsCoder steps,
      EventCoder events,
      WaveCoder waves,
      RowPlan plan,
      LampCoder.Options options) {
    this.options = options;
    this.table = table;
    this.waves = waves;
    segmenter = new Segmenter(table, plan, steps, events, options);
    hashes = table.hashes();
  }

  List<Score> scores() {
    List<Score> scores = new ArrayList<>();
    int n = table.frames;
    scores.add(new Score(segmenter.sections(0, n)));
    scores.add(new Score(segmenter.sectionsAtHolds(0, n)));
    int period = Periods.smallest(hashes);
    repeated(0, period, n).ifPresent(scores::add);
    List<Periods.Repeat> repeats = Periods.repeats(hashes, Format.MAX_BODY);
    if (!repeats.isEmpty()) {
      scores.add(mixed(repeats, false));
      scores.add(mixed(repeats, true));
    }
    return scores;
  }

  private Score mixed(List<Periods.Repeat> repeats, boolean atHolds) {
    List<Score.Entry> entries = new ArrayList<>();
    int at = 0;
    for (Periods.Repeat repeat : repeats) {
      entries.addAll(between(at, repeat.from(), atHolds));
      int length = repeat.to() - repeat.from();
      Optional<Score> score = repeated(repeat.from(), repeat.from() + repeat.period(), length);
      entries.addAll(score.orElseThrow().entries());
      at = repeat.to();
    }
    entries.addAll(between(at, table.frames, atHolds));
    return new Score(entries);
  }

  private List<Score.Entry> between(int from, int to, boolean atHolds) {
    return atHolds ? segmenter.sectionsAtHolds(from, to) : segmenter.sections(from, to);
  }

  /** The shortest score that plays the frames over and over; empty if there is none. */
  private Optional<Score> repeated(int from, int to, int frames) {
    // The same stretches come back in more than one score.
    return known.computeIfAbsent(
        new FoundWaves.Stretch(from, to, frames), s -> findRepeated(from, to, frames));
  }

  private Optional<Score> findRepeated(int from, int to, int frames) {
    List<Score> ways = new ArrayList<>();
    if (options.speedLevel() < SpeedLevels.MOST) {
      ways.addAll(waves.scores(from, to, frames, options.speeds()));
    }
    if (to - from <= Format.MAX_BODY) {
      ways.addAll(waves.sweeps(from, to, frames));
      for (Section section : segmenter.codings(from, to)) {
        ways.add(Score.of(frames, to - from, section));
      }
    }
    return Score.shortest(ways, options.coding());
  }
}
