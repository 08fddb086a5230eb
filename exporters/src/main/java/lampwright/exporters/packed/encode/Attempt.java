package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.format.Format;
import lampwright.exporters.packed.play.DecodeCost;

/** All scenes coded lamp by lamp, and the packed data that they make. */
final class Attempt {
  /** Share of the wire's time, less what the target's cost may be wrong by. */
  private static final double WIRE_SHARE = 0.25 * 0.95;

  final PackLayout layout;
  final List<int[]> lamps;
  final List<PackScene> scenes;
  final Coding coding;
  final DecodeCost cost;

  /** Whether the only lamp is the whole frame. */
  final boolean merged;

  /** By scene, then lamp. */
  final List<List<LampPart>> parts;

  /** By scene. */
  private final List<FoundWaves> found;

  final byte[] data;

  Attempt(
      PackLayout layout,
      List<int[]> lamps,
      List<PackScene> scenes,
      Coding coding,
      DecodeCost cost,
      boolean merged,
      List<List<LampPart>> parts,
      List<FoundWaves> found) {
    this.found = List.copyOf(found);
    this.layout = layout;
    this.lamps = lamps;
    this.scenes = scenes;
    this.coding = coding;
    this.cost = cost;
    this.merged = merged;
    this.parts = parts;
    data = assemble();
  }

  /** Cycles that a frame may take the player; 0 if it may take any. */
  double frameBudget() {
    return merged ? 0 : layout.wireMicros() * cost.megahertz() * WIRE_SHARE;
  }

  /** Whether places are wide enough for so much data. */
  boolean fits() {
    return data.length <= Format.maxSize(coding.placeBytes());
  }

  /** The same with one scene's parts changed. */
  Attempt with(int scene, List<LampPart> changed) {
    List<List<LampPart>> more = new ArrayList<>(parts);
    more.set(scene, changed);
    return new Attempt(layout, lamps, scenes, coding, cost, merged, more, found);
  }

  /** Reads a scene to code lamps of it anew. */
  SceneCoder coder(int scene) {
    return new SceneCoder(layout, lamps, scenes.get(scene), coding, cost, merged, found.get(scene));
  }

  private byte[] assemble() {
    int placeBytes = coding.placeBytes();
    Assembly out = new Assembly(placeBytes);
    out.bytes.u8(Format.MAGIC_0).u8(Format.MAGIC_1).number(0, 4).u8(Format.VERSION);
    out.bytes.u8(
        (coding.columnBytes() == 2 ? Format.WIDE_COLUMNS : 0)
            | (placeBytes == 3 ? Format.WIDE_PLACES : 0));
    out.bytes.u16(layout.frameBytes()).u8(lamps.size()).u8(scenes.size());
    out.bytes.number(0, placeBytes).number(0, placeBytes);
    ByteSink tables = new ByteSink();
    List<Integer> places = new ArrayList<>();
    for (int[] columns : lamps) {
      tables.number(columns[0], coding.columnBytes());
      int bytes = columns[columns.length - 1] - columns[0] + 1;
      if (merged) {
        tables.number(0, placeBytes);
      } else if (bytes == columns.length && bytes <= Format.MAX_DARK_ROW) {
        tables.number(Format.darkRow(placeBytes) + bytes - 1, placeBytes);
      } else {
        places.add(tables.size());
        tables.number(out.place(darkList(columns, coding), List.of()), placeBytes);
      }
    }
    for (int s = 0; s < scenes.size(); s++) {
      PackScene scene = scenes.get(s);
      tables.u24(scene.frames()).u24(scene.periodMicros() | (scene.loop() ? Format.LOOP : 0));
      for (LampPart part : parts.get(s)) {
        if (part.dark()) {
          tables.number(0, placeBytes);
        } else {
          places.add(tables.size());
          tables.number(program(out, part, scene), placeBytes);
        }
      }
    }
    return out.finish(tables.toBytes(), places);
  }

  private static byte[] darkList(int[] columns, Coding coding) {
    int[] relative = Arrays.stream(columns).map(c -> c - columns[0]).toArray();
    LampTable dark = new LampTable(relative, new byte[columns.length][1], 1);
    boolean[] must = new boolean[columns.length];
    Arrays.fill(must, true);
    ByteSink list = new ByteSink();
    new PatchCoder(dark, coding).write(list, dark.row(0), must);
    return list.u8(Format.GO).toBytes();
  }

  /** Puts a program and what it leads to in place; gives the program's offset. */
  private static int program(Assembly out, LampPart part, PackScene scene) {
    ByteSink program = new ByteSink();
    program.all(part.setup()).u8(Format.GO);
    int first = program.size();
    List<Integer> places = new ArrayList<>();
    for (Score.Entry entry : part.score().entries()) {
      program.u8(entry.frames() >> 8).u8(entry.frames());
      places.add(program.size());
      program.number(out.section(entry.section()), out.placeBytes);
    }
    if (scene.loop() && program.size() > first) {
      int back = program.size() - first;
      program.u8(Format.BACK).number(back, out.placeBytes);
    } else {
      program.u8(Format.REST);
    }
    return out.place(program.toBytes(), places);
  }
}
