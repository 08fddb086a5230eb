package lampwright.exporters.firmware;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Writes flash contents of the RP2040 as a file for the board's drive.
 *
 * <p>Source: USB Flashing Format (UF2). A block of 512 bytes, words low byte first:
 *
 * <pre>
 *   0    8    12       16        20       24     28         32            508
 *   +----+----+--------+---------+--------+------+----------+-----...-----+-----+
 *   |magic x 2|flags   |address  |bytes   |number|of blocks |family | data |magic|
 *   +----+----+--------+---------+--------+------+----------+-----...-----+-----+
 * </pre>
 */
final class Uf2File {
  /** Where flash begins in the controller's memory (RP2040 datasheet). */
  static final int FLASH = 0x1000_0000;

  /** What the boot ROM erases at a time: blocks fill whole sectors, so that none is left half. */
  static final int SECTOR = 4096;

  private static final int BLOCK = 512;
  private static final int PAYLOAD = 256;
  private static final int MAGIC_0 = 0x0A32_4655;
  private static final int MAGIC_1 = 0x9E5D_5157;
  private static final int MAGIC_END = 0x0AB1_6F30;
  private static final int FAMILY_PRESENT = 0x2000;
  private static final int RP2040 = 0xE48B_FF56;
  private static final int DATA_AT = 32;

  private Uf2File() {}

  /**
   * Writes a file.
   *
   * @param flash from the beginning of flash; whole sectors
   */
  static void write(byte[] flash, OutputStream out) throws IOException {
    if (flash.length == 0 || flash.length % SECTOR != 0) {
      throw new IllegalArgumentException("flash: " + flash.length + ": must be whole sectors");
    }
    int blocks = flash.length / PAYLOAD;
    for (int number = 0; number < blocks; number++) {
      ByteBuffer block = ByteBuffer.allocate(BLOCK).order(ByteOrder.LITTLE_ENDIAN);
      block.putInt(MAGIC_0).putInt(MAGIC_1).putInt(FAMILY_PRESENT);
      block.putInt(FLASH + PAYLOAD * number).putInt(PAYLOAD);
      block.putInt(number).putInt(blocks).putInt(RP2040);
      block.position(DATA_AT);
      block.put(flash, PAYLOAD * number, PAYLOAD);
      block.putInt(BLOCK - Integer.BYTES, MAGIC_END);
      out.write(block.array());
    }
  }
}
