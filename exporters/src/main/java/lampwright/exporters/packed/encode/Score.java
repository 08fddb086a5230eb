package lampwright.exporters.packed.encode;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.format.Format;

/**
 * What one lamp does in one scene: the sections to play, in order.
 *
 * @param entries sections with the frames that each is played for
 */
record Score(List<Entry> entries) {
  /** A section played for some frames. */
  record Entry(int frames, Section section) {}

  /** A section that starts again after every period, played for some frames. */
  static Score of(int frames, int period, Section section) {
    List<Entry> entries = new ArrayList<>();
    int most = Math.max(1, Format.MAX_ENTRY_FRAMES / period) * period;
    for (int left = frames; left > 0; left -= most) {
      entries.add(new Entry(Math.min(left, most), section));
    }
    return new Score(entries);
  }

  /** The shortest of some, of equal ones the first; empty if there are none. */
  static Optional<Score> shortest(List<Score> scores, Coding coding) {
    Optional<Score> shortest = Optional.empty();
    int least = Integer.MAX_VALUE;
    for (Score score : scores) {
      int size = score.size(coding);
      if (size < least) {
        shortest = Optional.of(score);
        least = size;
      }
    }
    return shortest;
  }

  /** Bytes that this adds to packed data, equal sections and waves counted once. */
  int size(Coding coding) {
    Set<ByteBuffer> seen = new HashSet<>();
    int size = 0;
    for (Entry entry : entries) {
      size += 2 + coding.placeBytes();
      if (seen.add(entry.section().view())) {
        size += entry.section().length();
      }
      for (Section.WaveRef ref : entry.section().waves()) {
        ByteBuffer wave = ref.view();
        if (seen.add(wave)) {
          size += wave.remaining();
        }
      }
    }
    return size;
  }
}
