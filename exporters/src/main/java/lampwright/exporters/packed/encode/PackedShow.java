package lampwright.exporters.packed.encode;

import java.util.Arrays;
import java.util.zip.CRC32;
import lampwright.exporters.packed.format.Format;

/** Puts the tables of a show behind packed scenes, which stay as they are. */
final class PackedShow {
  private PackedShow() {}

  /**
   * The scenes with a show.
   *
   * @param scenes packed data without one
   * @throws PackRefusedException if it is too long then
   */
  static byte[] append(byte[] scenes, byte[] show) {
    int placeBytes = (scenes[Format.FLAGS_AT] & Format.WIDE_PLACES) != 0 ? 3 : 2;
    int size = scenes.length + show.length;
    if (size > Format.maxSize(placeBytes)) {
      throw Packer.tooLong(size, placeBytes);
    }
    byte[] data = Arrays.copyOf(scenes, size);
    System.arraycopy(show, 0, data, scenes.length, show.length);
    data[Format.FLAGS_AT] |= Format.SHOW;
    set(data, Format.SIZE_AT, size, placeBytes);
    CRC32 crc = new CRC32();
    crc.update(data, Format.CHECKED_FROM, size - Format.CHECKED_FROM);
    set(data, Format.CRC_AT, (int) crc.getValue(), Integer.BYTES);
    return data;
  }

  private static void set(byte[] data, int at, int value, int bytes) {
    for (int i = 0; i < bytes; i++) {
      data[at + i] = (byte) (value >> (Byte.SIZE * i));
    }
  }
}
