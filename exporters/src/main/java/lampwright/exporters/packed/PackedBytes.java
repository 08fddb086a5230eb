package lampwright.exporters.packed;

import java.util.zip.CRC32;

/** Packed data with its header read and checked; every further read is checked against its end. */
final class PackedBytes {
  private final byte[] data;
  final int columnBytes;
  final int placeBytes;
  final int tables;
  final int frameBytes;
  final int lamps;
  final int scenes;

  PackedBytes(byte[] data) {
    this.data = data.clone();
    if (data.length < Format.LEAST_BYTES || u8(0) != Format.MAGIC_0 || u8(1) != Format.MAGIC_1) {
      throw fault(PackedDataException.Fault.NOT_PACKED, "not packed light");
    }
    int flags = u8(Format.FLAGS_AT);
    if (u8(Format.VERSION_AT) != Format.VERSION
        || flags > (Format.WIDE_COLUMNS | Format.WIDE_PLACES)) {
      throw fault(
          PackedDataException.Fault.VERSION,
          "format version "
              + u8(Format.VERSION_AT)
              + ", flags "
              + flags
              + ": only version 2 can be read");
    }
    columnBytes = (flags & Format.WIDE_COLUMNS) != 0 ? 2 : 1;
    placeBytes = (flags & Format.WIDE_PLACES) != 0 ? 3 : 2;
    int size = number(Format.SIZE_AT, placeBytes);
    if (size != data.length) {
      throw fault(
          PackedDataException.Fault.SIZE,
          "size: " + data.length + " bytes, but the header says " + size);
    }
    CRC32 crc = new CRC32();
    crc.update(data, Format.CHECKED_FROM, data.length - Format.CHECKED_FROM);
    if (number(Format.CRC_AT, 4) != (int) crc.getValue()) {
      throw fault(PackedDataException.Fault.CHECKSUM, "checksum: the data is damaged");
    }
    tables = number(Format.SIZE_AT + placeBytes, placeBytes);
    frameBytes = number(Format.FRAME_BYTES_AT, 2);
    lamps = u8(Format.LAMPS_AT);
    scenes = u8(Format.SCENES_AT);
  }

  static PackedDataException contents(int at) {
    return fault(
        PackedDataException.Fault.CONTENTS, "byte " + at + " of the packed data makes no sense");
  }

  private static PackedDataException fault(PackedDataException.Fault fault, String message) {
    return new PackedDataException(fault, message);
  }

  int u8(int at) {
    if (at < 0 || at >= data.length) {
      throw contents(at);
    }
    return data[at] & 255;
  }

  int number(int at, int count) {
    int value = 0;
    for (int i = 0; i < count; i++) {
      value |= u8(at + i) << (8 * i);
    }
    return value;
  }

  int column(int at) {
    return number(at, columnBytes);
  }

  /** Where a place leads, 0 if nowhere. */
  int place(int at) {
    int back = number(at, placeBytes);
    if (back > tables) {
      throw contents(at);
    }
    return back == 0 ? 0 : tables - back;
  }
}
