package lampwright.exporters.packed.play;

import java.util.ArrayList;
import java.util.List;
import lampwright.exporters.packed.format.ByteSink;

/**
 * Packed data written piece by piece from docs/packed.md, with narrow or wide columns and places.
 */
final class PackedByHand {
  /** In place of a program: the lamp is dark. */
  static final int DARK = -1;

  private record Hole(int at, int leadsTo) {}

  private final int columnBytes;
  private final int placeBytes;
  private final ByteSink contents = new ByteSink();
  private final List<Hole> holes = new ArrayList<>();

  /**
   * Dark lists of lamps: a number of the table, or the place of a list if it is in the contents.
   */
  private final List<int[]> lamps = new ArrayList<>();

  PackedByHand(boolean wide) {
    columnBytes = wide ? 2 : 1;
    placeBytes = wide ? 3 : 2;
  }

  /** Where the next piece begins. */
  int at() {
    return contents.size();
  }

  PackedByHand bytes(int... more) {
    for (int b : more) {
      contents.u8(b);
    }
    return this;
  }

  PackedByHand column(int column) {
    contents.number(column, columnBytes);
    return this;
  }

  PackedByHand place(int at) {
    holes.add(new Hole(contents.size(), at));
    contents.number(0, placeBytes);
    return this;
  }

  PackedByHand entry(int frames, int section) {
    return bytes(frames >> 8, frames & 255).place(section);
  }

  /** The last of a program whose entries began at a place in the contents. */
  PackedByHand back(int firstEntry) {
    int length = at() - firstEntry;
    bytes(0x81);
    contents.number(length, placeBytes);
    return this;
  }

  /** A kind with the bytes of a head. */
  PackedByHand section(int kind, PackedByHand head) {
    bytes(kind, head.at());
    head.holes.forEach(hole -> holes.add(new Hole(at() + hole.at(), hole.leadsTo())));
    contents.all(head.contents.toBytes());
    return this;
  }

  PackedByHand head() {
    return new PackedByHand(columnBytes == 2);
  }

  /** A lamp that clears as many bytes as given, 0 for all to the end of the frame. */
  PackedByHand lamp(int base, int clears) {
    int row = placeBytes == 2 ? 0xFF00 : 0xFFFF00;
    lamps.add(new int[] {base, clears == 0 ? 0 : row + clears - 1, DARK});
    return this;
  }

  /** A lamp with a list that clears it. */
  PackedByHand lampWithList(int base, int list) {
    lamps.add(new int[] {base, 0, list});
    return this;
  }

  /** A file with one scene for each row of programs, 20 ms a frame; the first goes round. */
  byte[] file(int frameBytes, int frames, int[]... programs) {
    ByteSink out = new ByteSink();
    int header = 12 + 2 * placeBytes;
    int size = contents.size();
    int tables = header + size;
    int end = tables + lamps.size() * (columnBytes + placeBytes);
    end += programs.length * (6 + lamps.size() * placeBytes);
    out.u8('L').u8('W').number(0, 4).u8(2).u8(placeBytes == 3 ? 3 : 0).u16(frameBytes);
    out.u8(lamps.size()).u8(programs.length).number(end, placeBytes).number(tables, placeBytes);
    holes.forEach(hole -> contents.set(hole.at(), size - hole.leadsTo(), placeBytes));
    out.all(contents.toBytes());
    for (int[] lamp : lamps) {
      out.number(lamp[0], columnBytes);
      out.number(lamp[2] == DARK ? lamp[1] : size - lamp[2], placeBytes);
    }
    int loop = 0x800000;
    for (int[] ofLamps : programs) {
      out.u24(frames).u24(20_000 + loop);
      loop = 0;
      for (int program : ofLamps) {
        out.number(program == DARK ? 0 : size - program, placeBytes);
      }
    }
    return DamagedData.sealed(out.toBytes());
  }
}
