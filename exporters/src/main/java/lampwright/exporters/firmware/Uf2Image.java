package lampwright.exporters.firmware;

import com.google.common.hash.HashCode;
import com.google.common.hash.Hashing;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import lampwright.exporters.target.Rp2040Bits;
import lampwright.exporters.target.Rp2040Board;

/**
 * The flash of an RP2040 that plays one scene, or the situations. The program is a resource, built
 * from the sources beside it; what is fitted to the pins is a table behind it. Numbers are
 * unsigned, low byte first.
 *
 * <pre>
 *   0x10000000   second boot stage, 252 bytes
 *   0x100000FC   its CRC-32 as the boot ROM wants it
 *   0x10000100   u32 words of the program, u32 its CRC-32
 *   0x10000108   the program, run at 0x20000000; then FF
 *   0x10008000   the table
 *
 *        0   +-------------------------------+
 *            | "LWT1"                        |
 *        4   | CRC-32 of bytes 8 to 215      | u32
 *        8   | version, 2                    | u16
 *       10   | scene of the packed data, or  | u16
 *            | FFFF: the situations          |
 *       12   | bytes of packed data          | u32
 *       16   | from frame to frame, us       | u32
 *       20   | and part /                    | u16
 *       22   |     (part + missing) of a us  | u16
 *       24   | bytes of a frame              | u32
 *       28   | chains, 0 to 8; outputs, to 16| u8, u8
 *       30   | PIO divider                   | u16
 *       32   | PWM divider in sixteenths     | u16
 *       34   | PWM top                       | u16
 *       36   | 8 chains of 12 bytes          |  pin, high, high 1, low 0, low, 0: u8;
 *            |                               |  bytes: u16; busy for us: u32
 *      132   | 16 pins of outputs            | u8 each
 *      148   | inputs, to 32; 0, 0, 0        | u8 each
 *      152   | 32 inputs of 2 bytes          |  pin: u8; 0 receiver channel, 1 switch,
 *            |                               |  2 switch to ground: u8
 *      216   +-------------------------------+
 *            | packed data (packed.md)       |
 *            +-------------------------------+   then FF to the end of the sector
 * </pre>
 */
final class Uf2Image {
  /** Where the table is, from the beginning of flash. */
  static final int TABLE_AT = 0x8000;

  static final int TABLE_BYTES = 216;

  private static final String PROGRAM = "rp2040-image/program.bin";
  private static final int MAGIC = 0x3154_574C;
  private static final int CRC_AT = 4;
  private static final int CHECKED_FROM = 8;
  private static final int VERSION = 2;
  private static final int SITUATIONS = 0xFFFF;
  private static final int CHAINS_AT = 36;
  private static final int CHAIN_BYTES = 12;
  private static final int OUTPUTS_AT = 132;
  private static final int INPUTS_AT = 148;
  private static final int FIRST_INPUT_AT = 152;
  private static final byte ERASED = (byte) 0xFF;

  private static final BigDecimal US_PER_SECOND = BigDecimal.valueOf(1_000_000);
  private static final int MILLI = 1000;

  private Uf2Image() {}

  /** The second boot stage and the program. */
  static byte[] program() throws IOException {
    try (InputStream in = Uf2Image.class.getResourceAsStream(PROGRAM)) {
      if (in == null) {
        throw new FileNotFoundException(PROGRAM + ": missing in the program");
      }
      return in.readAllBytes();
    }
  }

  /**
   * The flash contents, whole sectors.
   *
   * @param framesPerSecond of the scene, or of the show
   * @param packed one scene, or the scenes of a show
   * @param reacts whether the situations are played
   */
  static byte[] of(Rp2040Board board, BigDecimal framesPerSecond, byte[] packed, boolean reacts)
      throws IOException {
    byte[] program = program();
    int end = TABLE_AT + TABLE_BYTES + packed.length;
    int sectors = (end + Uf2File.SECTOR - 1) / Uf2File.SECTOR;
    byte[] flash = new byte[sectors * Uf2File.SECTOR];
    Arrays.fill(flash, ERASED);
    System.arraycopy(program, 0, flash, 0, program.length);
    byte[] table = table(board, framesPerSecond, packed.length, reacts);
    System.arraycopy(table, 0, flash, TABLE_AT, TABLE_BYTES);
    System.arraycopy(packed, 0, flash, TABLE_AT + TABLE_BYTES, packed.length);
    return flash;
  }

  private static byte[] table(
      Rp2040Board board, BigDecimal framesPerSecond, int packedBytes, boolean reacts) {
    ByteBuffer table = ByteBuffer.allocate(TABLE_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    table.putInt(MAGIC).putInt(0).putShort((short) VERSION);
    table.putShort((short) (reacts ? SITUATIONS : 0)).putInt(packedBytes);
    period(table, framesPerSecond);
    table.putInt(board.frameBytes());
    table.put((byte) board.chains().size()).put((byte) board.outputPins().size());
    table.putShort((short) board.pioDivider()).putShort((short) board.pwmDivider());
    table.putShort((short) board.pwmTop());
    for (int c = 0; c < board.chains().size(); c++) {
      table.position(CHAINS_AT + CHAIN_BYTES * c);
      Rp2040Board.Line line = board.chains().get(c);
      Rp2040Bits bits = line.bits();
      table.put((byte) line.pin()).put((byte) bits.high()).put((byte) bits.high1());
      table.put((byte) bits.low0()).put((byte) bits.low()).put((byte) 0);
      table.putShort((short) line.bytes()).putInt(line.busyUs());
    }
    table.position(OUTPUTS_AT);
    board.outputPins().forEach(pin -> table.put((byte) (int) pin));
    if (reacts) {
      table.put(INPUTS_AT, (byte) board.inputs().size()).position(FIRST_INPUT_AT);
      board.inputs().forEach(input -> table.put((byte) input.pin()).put((byte) input.kind()));
    }
    HashCode crc =
        Hashing.crc32().hashBytes(table.array(), CHECKED_FROM, TABLE_BYTES - CHECKED_FROM);
    return table.putInt(CRC_AT, crc.asInt()).array();
  }

  /**
   * The time from frame to frame, as LAMPWRIGHT_RATE of lampwright_show.h has it: exact for rates
   * of up to three decimals and 65.535 frames/s, and for whole ones.
   */
  private static void period(ByteBuffer table, BigDecimal framesPerSecond) {
    long millihertz =
        framesPerSecond
            .multiply(BigDecimal.valueOf(MILLI))
            .setScale(0, RoundingMode.HALF_UP)
            .longValueExact();
    long all = US_PER_SECOND.longValueExact() * MILLI;
    long rest = all % millihertz;
    long whole = millihertz;
    if (millihertz > 0xFFFF) {
      whole = millihertz % 20 == 0 && rest % 20 == 0 ? millihertz / 20 : 0xFFFF;
    }
    long part = rest * whole / millihertz;
    table.putInt((int) (all / millihertz)).putShort((short) part).putShort((short) (whole - part));
  }
}
