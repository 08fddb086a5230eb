package lampwright.app.live;

import com.google.common.primitives.Bytes;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;

/**
 * Reads a data packet by ANSI E1.31-2018, table 4-1 ("E1.31 Data Packet"), field by field, and
 * throws where a field is not what the table has. It shares nothing with the program.
 */
record E131Reader(
    UUID cid,
    String name,
    int priority,
    int synchronization,
    int sequence,
    int options,
    int universe,
    List<Byte> slots) {
  static E131Reader read(byte[] packet) {
    // Root layer: octets 0 to 37.
    expect(packet, 0, 0x00, 0x10);
    expect(packet, 2, 0x00, 0x00);
    expect(packet, 4, 0x41, 0x53, 0x43, 0x2d, 0x45, 0x31, 0x2e, 0x31, 0x37, 0x00, 0x00, 0x00);
    length(packet, 16);
    expect(packet, 18, 0x00, 0x00, 0x00, 0x04);
    UUID cid = new UUID(number(packet, 22, 8), number(packet, 30, 8));
    // Framing layer: octets 38 to 114.
    length(packet, 38);
    expect(packet, 40, 0x00, 0x00, 0x00, 0x02);
    int end = 44;
    while (packet[end] != 0) {
      end++;
    }
    for (int i = end; i < 108; i++) {
      expect(packet, i, 0);
    }
    String name = new String(packet, 44, end - 44, StandardCharsets.UTF_8);
    // DMP layer: octets 115 to 637.
    length(packet, 115);
    expect(packet, 117, 0x02);
    expect(packet, 118, 0xa1);
    expect(packet, 119, 0x00, 0x00);
    expect(packet, 121, 0x00, 0x01);
    int count = (int) number(packet, 123, 2);
    if (count != packet.length - 125 || count > 513) {
      throw new AssertionError("property value count " + count);
    }
    expect(packet, 125, 0x00);
    return new E131Reader(
        cid,
        name,
        packet[108] & 0xFF,
        (int) number(packet, 109, 2),
        packet[111] & 0xFF,
        packet[112] & 0xFF,
        (int) number(packet, 113, 2),
        Bytes.asList(packet).subList(126, packet.length));
  }

  private static void expect(byte[] packet, int at, int... values) {
    for (int i = 0; i < values.length; i++) {
      if ((packet[at + i] & 0xFF) != values[i]) {
        throw new AssertionError("octet " + (at + i) + " is " + (packet[at + i] & 0xFF));
      }
    }
  }

  // The low 12 bits are the PDU's length from this octet on, the high 4 are 0x7.
  private static void length(byte[] packet, int at) {
    long value = number(packet, at, 2);
    if (value >> 12 != 7 || (value & 0xFFF) != packet.length - at) {
      throw new AssertionError("flags and length at " + at + ": " + value);
    }
  }

  private static long number(byte[] packet, int at, int bytes) {
    long value = 0;
    for (int i = 0; i < bytes; i++) {
      value = (value << 8) | (packet[at + i] & 0xFF);
    }
    return value;
  }
}
