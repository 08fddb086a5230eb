package lampwright.exporters.proof;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import lampwright.exporters.proof.rp2040.Flash;

/**
 * Puts a UF2 file into flash, as strictly as can be: every block whole, for this controller, and
 * one behind another from the start of flash, as ours are. The format lets blocks lie anywhere; one
 * that moved to a free place would leave its own erased. The form: USB Flashing Format (UF2).
 *
 * <pre>
 *   0  0x0A324655   4  0x9E5D5157   8  flags    12  address
 *  16  payload     20  block       24  blocks   28  family
 *  32  data, 476 bytes                         508  0x0AB16F30
 * </pre>
 */
public final class Uf2Reader {
  private static final int BLOCK = 512;
  private static final int DATA = 32;
  private static final int MAGIC_0 = 0x0A324655;
  private static final int MAGIC_1 = 0x9E5D5157;
  private static final int MAGIC_END = 0x0AB16F30;
  private static final int FAMILY_PRESENT = 0x2000;
  private static final int RP2040 = 0xE48BFF56;
  private static final int FLASH = 0x10000000;

  private Uf2Reader() {}

  /**
   * Flash that holds the file's blocks.
   *
   * @throws Uf2Exception naming the first block that is not as it must be
   */
  public static Flash read(byte[] file) throws Uf2Exception {
    if (file.length == 0 || file.length % BLOCK != 0) {
      throw new Uf2Exception(
          file.length / BLOCK, "the file has " + file.length + " bytes, no whole blocks of 512");
    }
    int blocks = file.length / BLOCK;
    if (blocks > Flash.MAX_BYTES / Flash.PAGE) {
      throw new Uf2Exception(
          Flash.MAX_BYTES / Flash.PAGE, "more than the " + Flash.MAX_BYTES + " bytes of flash");
    }
    Flash flash = new Flash();
    ByteBuffer bytes = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
    for (int block = 0; block < blocks; block++) {
      read(bytes, block, blocks, flash);
    }
    return flash;
  }

  private static void read(ByteBuffer file, int block, int blocks, Flash flash)
      throws Uf2Exception {
    int at = block * BLOCK;
    check(block, "magic number", file.getInt(at), MAGIC_0);
    check(block, "second magic number", file.getInt(at + 4), MAGIC_1);
    check(block, "flags", file.getInt(at + 8), FAMILY_PRESENT);
    check(block, "address", file.getInt(at + 12), FLASH + block * Flash.PAGE);
    check(block, "payload", file.getInt(at + 16), Flash.PAGE);
    check(block, "number", file.getInt(at + 20), block);
    check(block, "number of blocks", file.getInt(at + 24), blocks);
    check(block, "family", file.getInt(at + 28), RP2040);
    check(block, "last magic number", file.getInt(at + BLOCK - 4), MAGIC_END);
    for (int i = at + DATA + Flash.PAGE; i < at + BLOCK - 4; i++) {
      check(block, "byte " + (i - at), file.get(i), 0);
    }
    byte[] page = new byte[Flash.PAGE];
    file.get(at + DATA, page);
    flash.write(block * Flash.PAGE, page);
  }

  private static void check(int block, String what, int is, int mustBe) throws Uf2Exception {
    if (is != mustBe) {
      throw new Uf2Exception(
          block,
          what + " is 0x" + Integer.toHexString(is) + ", must be 0x" + Integer.toHexString(mustBe));
    }
  }
}
