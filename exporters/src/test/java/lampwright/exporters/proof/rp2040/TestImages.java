package lampwright.exporters.proof.rp2040;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;

/** Small images to run: a second boot stage that is code of a test, and what else flash holds. */
public final class TestImages {
  /** Where the boot ROM runs the second stage. */
  public static final int STAGE = 0x20041F00;

  private TestImages() {}

  /** Flash with a second stage. */
  public static Flash flash(byte[] stage) {
    Flash flash = new Flash();
    flash.write(0, withChecksum(stage));
    return flash;
  }

  /** Flash with a second stage that sets up flash and goes on at an address, and code there. */
  public static Flash flash(int address, byte[] code) {
    Thumb stage = setUpFlash(new Thumb(STAGE)).load(0, address | 1).op(0x4700);
    Flash flash = flash(stage.bytes());
    for (int at = 0; at < code.length; at += Flash.PAGE) {
      flash.write(address - 0x10000000 + at, Arrays.copyOfRange(code, at, at + Flash.PAGE));
    }
    return flash;
  }

  /** Registers of the flash interface: RP2040 datasheet, 4.10; read command 03h, 24 bits. */
  public static Thumb setUpFlash(Thumb code) {
    return code.poke(0x18000008, 0)
        .poke(0x18000014, 4)
        .poke(0x18000000, 31 << 16 | 3 << 8)
        .poke(0x180000F4, 3 << 24 | 2 << 8 | 6 << 2)
        .poke(0x18000008, 1);
  }

  /** CRC-32, polynomial 0x04C11DB7, not reflected, start all ones, not inverted; a bit a time. */
  private static byte[] withChecksum(byte[] stage) {
    byte[] page = Arrays.copyOf(stage, 256);
    if (stage.length > 252) {
      throw new IllegalArgumentException("a second stage of " + stage.length + " bytes");
    }
    long register = 0xFFFFFFFFL;
    for (int i = 0; i < 252 * 8; i++) {
      long top = ((register >> 31) & 1) ^ ((page[i / 8] >> (7 - i % 8)) & 1);
      register = ((register << 1) & 0xFFFFFFFFL) ^ (top == 1 ? 0x04C11DB7 : 0);
    }
    ByteBuffer.wrap(page).order(ByteOrder.LITTLE_ENDIAN).putInt(252, (int) register);
    return page;
  }
}
