package lampwright.exporters.packed.encode;

import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Format;

/** Puts the tables of a show behind packed scenes, which stay as they are. */
final class PackedShow {
  private PackedShow() {}

  /**
   * The scenes with a show.
   *
   * @param scenes packed data without one
   * @param ceiling the table of a ceiling, of no bytes if there is none
   * @throws PackRefusedException if it is too long then
   */
  static byte[] append(byte[] scenes, byte[] show, byte[] ceiling) {
    int placeBytes = (scenes[Format.FLAGS_AT] & Format.WIDE_PLACES) != 0 ? 3 : 2;
    int size = scenes.length + show.length + ceiling.length;
    if (size > Format.maxSize(placeBytes)) {
      throw Packer.tooLong(size, placeBytes);
    }
    ByteSink data = new ByteSink().all(scenes).all(show).all(ceiling);
    int flags = Format.SHOW | (ceiling.length > 0 ? Format.CEILING : 0);
    data.set(Format.FLAGS_AT, scenes[Format.FLAGS_AT] | flags, 1);
    data.set(Format.SIZE_AT, size, placeBytes);
    data.set(Format.CRC_AT, Format.checksum(data.toBytes()), Integer.BYTES);
    return data.toBytes();
  }
}
