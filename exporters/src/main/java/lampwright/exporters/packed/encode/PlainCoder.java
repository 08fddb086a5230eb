package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.List;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Format;

/** Writes frames of a lamp as they are: shortest where nothing repeats, and quickest to play. */
final class PlainCoder {
  private PlainCoder() {}

  /** Whether the lamp's columns are 0, 1, 2 ..., which plain rows have to be. */
  static boolean suits(LampTable table) {
    return table.columns[table.columns.length - 1] == table.columns.length - 1;
  }

  /** Frames as one section, which can be played once an entry. */
  static Section section(LampTable table, int from, int to) {
    ByteSink out = new ByteSink();
    Format.writeKind(out, Format.PLAIN, table.columns.length);
    for (int f = from; f < to; f++) {
      for (int value : table.row(f)) {
        out.u8(value);
      }
    }
    return new Section(out.toBytes(), List.of());
  }

  /** The score of a whole table whose columns are 0, 1, 2 ... */
  static Score score(LampTable table) {
    List<Score.Entry> entries = new ArrayList<>();
    int frames = table.slots.isEmpty() ? 1 : table.frames;
    for (int from = 0; from < frames; from += Format.MAX_ENTRY_FRAMES) {
      int count = Math.min(Format.MAX_ENTRY_FRAMES, frames - from);
      entries.add(new Score.Entry(count, section(table, from, from + count)));
    }
    return new Score(entries);
  }
}
