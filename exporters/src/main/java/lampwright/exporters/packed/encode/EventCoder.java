package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.List;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.format.Format;

/** Codes a stretch of a lamp's frames as what changes in each: holds and patches alone. */
final class EventCoder {
  private final LampTable table;
  private final PatchCoder patches;
  private final boolean[] varying;

  EventCoder(LampTable table, Coding coding) {
    this(table, coding, table.varying());
  }

  /**
   * Codes a part of a lamp's frames.
   *
   * @param varying which columns change in other parts too, so that each section has to set them
   */
  EventCoder(LampTable table, Coding coding, boolean[] varying) {
    this.table = table;
    this.varying = varying.clone();
    patches = new PatchCoder(table, coding);
  }

  /** Instructions that set the columns that never change, where not 0. */
  byte[] setup() {
    boolean[] must = new boolean[varying.length];
    for (int i = 0; i < must.length; i++) {
      must[i] = !varying[i] && table.at(i, 0) != 0;
    }
    ByteSink out = new ByteSink();
    patches.write(out, table.row(0), must);
    return out.toBytes();
  }

  /** Sets all columns that ever change, as a section that starts anywhere has to. */
  void writeKey(ByteSink out, int frame) {
    patches.write(out, table.row(frame), varying);
  }

  /** Sets all columns that ever change but those of some slots. */
  void writeKey(ByteSink out, int frame, List<Integer> except) {
    boolean[] must = varying.clone();
    for (int slot : except) {
      for (int index : table.slots.get(slot)) {
        must[index] = false;
      }
    }
    patches.write(out, table.row(frame), must);
  }

  static void writeHold(ByteSink out, int frames) {
    for (int left = frames; left > 0; left -= Format.MAX_HOLD) {
      out.u8(Format.HOLD + Math.min(left, Format.MAX_HOLD) - 1);
    }
  }

  /** The first frame from the given one on that changes something; the end if none does. */
  int stillUntil(int from, int to) {
    int f = from;
    while (f < to && table.still(f)) {
      f++;
    }
    return f;
  }

  /** Every change a patch. */
  Section section(int from, int to) {
    ByteSink out = new ByteSink();
    Format.writeKind(out, Format.STEPS, 0);
    writeKey(out, from);
    int f = from;
    while (f < to) {
      int until = stillUntil(f + 1, to);
      writeHold(out, until - f);
      f = until;
      if (f < to) {
        boolean[] must = new boolean[table.columns.length];
        for (int i = 0; i < must.length; i++) {
          must[i] = table.at(i, f) != table.at(i, f - 1);
        }
        patches.write(out, table.row(f), must);
      }
    }
    out.u8(Format.AGAIN);
    return new Section(out.toBytes(), List.of());
  }

  /** One frame, for as long as the section is played. */
  Section rest(int frame) {
    ByteSink out = new ByteSink();
    Format.writeKind(out, Format.STEPS, 0);
    writeKey(out, frame);
    out.u8(Format.HOLD + Format.MAX_HOLD - 1).u8(Format.AGAIN);
    return new Section(out.toBytes(), List.of());
  }

  /** The first frame, for as long as the table is. */
  List<Score.Entry> still() {
    List<Score.Entry> entries = new ArrayList<>();
    for (int from = 0; from < table.frames; from += Format.MAX_ENTRY_FRAMES) {
      int count = Math.min(Format.MAX_ENTRY_FRAMES, table.frames - from);
      entries.add(new Score.Entry(count, rest(0)));
    }
    return entries;
  }

  /** The whole table, each frame once; no entries if nothing ever changes. */
  Score score() {
    List<Score.Entry> entries = new ArrayList<>();
    int frames = table.slots.isEmpty() ? 0 : table.frames;
    for (int from = 0; from < frames; from += Format.MAX_ENTRY_FRAMES) {
      int count = Math.min(Format.MAX_ENTRY_FRAMES, frames - from);
      entries.add(new Score.Entry(count, section(from, from + count)));
    }
    return new Score(entries);
  }
}
