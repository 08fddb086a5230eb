package lampwright.exporters.packed.play;

import lampwright.exporters.packed.format.CeilingFormat;
import lampwright.exporters.packed.format.Format;

/**
 * Packed data with its header and the extent of its tables read and checked. Every further read is
 * checked too: of a table against the data's end, of contents against the tables, before which all
 * contents lie.
 */
final class PackedBytes {
  private final byte[] data;
  final int columnBytes;
  final int placeBytes;
  private final int tables;
  private final int headerBytes;
  final int frameBytes;
  final int lamps;
  final int scenes;

  /** Where the show begins, or the data ends. */
  final int showAt;

  /** Where the ceiling begins, or the data ends. */
  final int ceilingAt;

  PackedBytes(byte[] data) {
    this.data = data.clone();
    if (data.length < Format.LEAST_BYTES
        || table(0, 1) != Format.MAGIC_0
        || table(1, 1) != Format.MAGIC_1) {
      throw fault(PackedDataException.Damage.NOT_PACKED, "not packed light");
    }
    int flags = table(Format.FLAGS_AT, 1);
    if (table(Format.VERSION_AT, 1) != Format.VERSION || flags > Format.FLAGS) {
      throw fault(
          PackedDataException.Damage.VERSION,
          "format version "
              + table(Format.VERSION_AT, 1)
              + ", flags "
              + flags
              + ": only version 2 can be read");
    }
    columnBytes = (flags & Format.WIDE_COLUMNS) != 0 ? 2 : 1;
    placeBytes = (flags & Format.WIDE_PLACES) != 0 ? 3 : 2;
    int size = table(Format.SIZE_AT, placeBytes);
    if (size != data.length) {
      throw fault(
          PackedDataException.Damage.SIZE,
          "size: " + data.length + " bytes, but the header says " + size);
    }
    if (table(Format.CRC_AT, 4) != Format.checksum(data)) {
      throw fault(PackedDataException.Damage.CHECKSUM, "checksum: the data is damaged");
    }
    tables = table(Format.SIZE_AT + placeBytes, placeBytes);
    headerBytes = Format.HEADER_BYTES + 2 * (placeBytes - 2);
    frameBytes = table(Format.FRAME_BYTES_AT, 2);
    lamps = table(Format.LAMPS_AT, 1);
    scenes = table(Format.SCENES_AT, 1);
    boolean show = (flags & Format.SHOW) != 0;
    showAt = sceneAt(scenes);
    if (tables < headerBytes
        || lamps == 0
        || scenes == 0
        || (show ? showAt >= size : showAt != size)) {
      throw badContents(Format.SIZE_AT + placeBytes);
    }
    boolean ceiling = (flags & Format.CEILING) != 0;
    if (ceiling && !show) {
      throw badContents(Format.FLAGS_AT);
    }
    int sizeAt = size - CeilingFormat.SIZE_BYTES;
    ceilingAt = ceiling ? size - table(Math.max(sizeAt, 0), CeilingFormat.SIZE_BYTES) : size;
    if (ceiling && (ceilingAt <= showAt || ceilingAt > sizeAt - CeilingFormat.LIMIT_BYTES)) {
      throw badContents(sizeAt);
    }
  }

  /** Bytes of the whole. */
  int size() {
    return data.length;
  }

  /** Where a lamp's table is. */
  int lampAt(int lamp) {
    return tables + lamp * (columnBytes + placeBytes);
  }

  /** Where a scene's table is. */
  int sceneAt(int scene) {
    return lampAt(lamps) + scene * (Format.SCENE_BYTES + lamps * placeBytes);
  }

  static PackedDataException badContents(int at) {
    return fault(
        PackedDataException.Damage.CONTENTS, "byte " + at + " of the packed data makes no sense");
  }

  private static PackedDataException fault(PackedDataException.Damage fault, String message) {
    return new PackedDataException(fault, message);
  }

  /** A byte of the contents. */
  int u8(int at) {
    if (at < headerBytes || at >= tables) {
      throw badContents(at);
    }
    return data[at] & 255;
  }

  /** A number in the contents. */
  int number(int at, int count) {
    int value = 0;
    for (int i = 0; i < count; i++) {
      value |= u8(at + i) << (8 * i);
    }
    return value;
  }

  /** A number in the header or the tables. */
  int table(int at, int count) {
    if (at > data.length - count) {
      throw badContents(at);
    }
    int value = 0;
    for (int i = 0; i < count; i++) {
      value |= (data[at + i] & 255) << (8 * i);
    }
    return value;
  }

  int column(int at) {
    return number(at, columnBytes);
  }

  /** Where a place in the contents leads. */
  int place(int at) {
    return follow(at, number(at, placeBytes));
  }

  /** Where a place in the tables leads, 0 if nowhere. */
  int tablePlace(int at) {
    int back = table(at, placeBytes);
    return back == 0 ? 0 : follow(at, back);
  }

  private int follow(int at, int back) {
    if (back == 0 || back > tables - headerBytes) {
      throw badContents(at);
    }
    return tables - back;
  }
}
