package lampwright.exporters.packed;

import java.util.ArrayList;
import java.util.List;

/** Writes a table as it is: what is left where nothing shortens it. */
final class PlainCoder {
  private PlainCoder() {}

  /** The score of a table whose columns are 0, 1, 2 ... */
  static Score score(LampTable table) {
    List<Score.Entry> entries = new ArrayList<>();
    int frames = table.slots.isEmpty() ? 1 : table.frames;
    for (int from = 0; from < frames; from += Format.MAX_ENTRY_FRAMES) {
      int count = Math.min(Format.MAX_ENTRY_FRAMES, frames - from);
      ByteSink out = new ByteSink();
      Format.writeKind(out, Format.PLAIN, table.columns.length);
      for (int f = from; f < from + count; f++) {
        for (int value : table.row(f)) {
          out.u8(value);
        }
      }
      entries.add(new Score.Entry(count, new Section(out.toBytes(), List.of())));
    }
    return new Score(entries);
  }
}
