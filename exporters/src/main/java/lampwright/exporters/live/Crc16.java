package lampwright.exporters.live;

import java.util.Objects;

/**
 * CRC-16/MCRF4XX: polynomial 0x1021, bits reflected (0x8408), from 0xFFFF, no final xor. Of the
 * bytes of "123456789" it is 0x6F91 (the RevEng catalogue of CRCs, from memory). {@code
 * _crc_ccitt_update} of avr-libc makes a step of it.
 */
public final class Crc16 {
  private static final int START = 0xFFFF;
  private static final int REFLECTED_POLYNOMIAL = 0x8408;

  private Crc16() {}

  /**
   * The CRC of the bytes {@code [from, to)}, 0 to 65,535.
   *
   * @throws IndexOutOfBoundsException if they are not all there
   */
  public static int of(byte[] bytes, int from, int to) {
    Objects.checkFromToIndex(from, to, bytes.length);
    int crc = START;
    for (int i = from; i < to; i++) {
      crc ^= bytes[i] & 0xFF;
      for (int bit = 0; bit < Byte.SIZE; bit++) {
        crc = (crc & 1) == 0 ? crc >> 1 : crc >> 1 ^ REFLECTED_POLYNOMIAL;
      }
    }
    return crc;
  }
}
