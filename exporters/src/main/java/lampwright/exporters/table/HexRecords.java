package lampwright.exporters.table;

import java.io.IOException;

/**
 * Records of the Intel hexadecimal object file format (Intel, 1988), as text:
 *
 * <pre>
 *   :  LL  AAAA  TT  DD ... DD  CC
 *   |  |   |     |   |          checksum: all bytes of the record sum to 0 mod 256
 *   |  |   |     |   LL data bytes
 *   |  |   |     type: 00 data, 01 end, 04 upper 16 bits of the addresses that follow
 *   |  |   lower 16 bits of the address, high byte first
 *   |  data bytes
 *   start
 * </pre>
 *
 * Data is gathered into records of 16 bytes. No record runs past a multiple of 64 KiB, where the
 * lower half of the address starts again; there a record of type 04 goes before the data.
 */
final class HexRecords {
  private static final int DATA_BYTES = 16;
  private static final int MAX_TEXT = 1 + 2 * (4 + DATA_BYTES + 1) + 1;
  private static final int DATA = 0;
  private static final int END = 1;
  private static final int UPPER_ADDRESS = 4;
  private static final String DIGITS = "0123456789ABCDEF";

  // Each byte's two digits, the first in the low byte.
  private static final short[] PAIRS = new short[256];

  static {
    for (int value = 0; value < 256; value++) {
      PAIRS[value] = (short) (DIGITS.charAt(value >> 4) | DIGITS.charAt(value & 15) << 8);
    }
  }

  private final BlockOutput out;
  private final byte[] gathered = new byte[DATA_BYTES];
  private int count;
  private int wanted;
  private long address;
  private int upper;

  /**
   * Records from an address.
   *
   * @param address of the first byte, 0 to 0xFFFFFFFF
   */
  HexRecords(BlockOutput out, long address) {
    this.out = out;
    this.address = address;
    this.wanted = upTo64K(address);
  }

  /** Adds the next bytes. */
  void data(byte[] bytes) throws IOException {
    int from = 0;
    while (from < bytes.length) {
      int taken = Math.min(wanted - count, bytes.length - from);
      System.arraycopy(bytes, from, gathered, count, taken);
      count += taken;
      from += taken;
      if (count == wanted) {
        dataRecord();
      }
    }
  }

  /** Writes what is still gathered, and the end record. */
  void end() throws IOException {
    if (count > 0) {
      dataRecord();
    }
    record(END, 0, gathered, 0);
  }

  private void dataRecord() throws IOException {
    int newUpper = (int) (address >>> 16);
    if (newUpper != upper) {
      upper = newUpper;
      record(UPPER_ADDRESS, 0, new byte[] {(byte) (upper >> 8), (byte) upper}, 2);
    }
    record(DATA, (int) (address & 0xFFFF), gathered, count);
    address += count;
    count = 0;
    wanted = upTo64K(address);
  }

  private void record(int type, int lower, byte[] data, int length) throws IOException {
    byte[] block = out.block();
    int at = out.reserve(MAX_TEXT);
    block[at++] = ':';
    at = pair(block, at, length);
    at = pair(block, at, lower >> 8);
    at = pair(block, at, lower);
    at = pair(block, at, type);
    int sum = length + (lower >> 8) + lower + type;
    for (int i = 0; i < length; i++) {
      sum += data[i];
      at = pair(block, at, data[i]);
    }
    at = pair(block, at, -sum);
    block[at++] = '\n';
    out.keepTo(at);
  }

  private static int pair(byte[] block, int at, int value) {
    BlockOutput.SHORT.set(block, at, PAIRS[value & 0xFF]);
    return at + 2;
  }

  private static int upTo64K(long address) {
    return (int) Math.min(DATA_BYTES, 0x1_0000 - (address & 0xFFFF));
  }
}
