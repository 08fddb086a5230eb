package lampwright.app.live;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * Data packets of ANSI E1.31-2018, table 4-1. Numbers go high byte first.
 *
 * <pre>
 *   0    preamble size, 0x0010
 *   2    post-amble size, 0
 *   4    "ASC-E1.17", three nulls           packet identifier
 *   16   0x7000 | bytes from here on        root layer
 *   18   0x00000004                         vector: E1.31 data
 *   22   CID (16)
 *   38   0x7000 | bytes from here on        framing layer
 *   40   0x00000002                         vector: DMP within
 *   44   source name (64), UTF-8, null at its end
 *   108  priority
 *   109  synchronization address (2), 0: none
 *   111  sequence number
 *   112  options: 0x40 at the end of the stream
 *   113  universe (2)
 *   115  0x7000 | bytes from here on        DMP layer
 *   117  0x02                               vector: set property
 *   118  0xA1                               address and data type
 *   119  first property address (2), 0
 *   121  address increment (2), 1
 *   123  property values (2): 1 + slots
 *   125  start code, 0
 *   126  slots
 * </pre>
 */
final class E131Packet {
  /** The most slots of a universe. */
  static final int MOST_SLOTS = 512;

  /**
   * The fewest slots that are sent, those past the frame's 0: a DMX512 packet of fewer takes no
   * less time (ANSI E1.11-2008, table 6: 1,204 us from break to break).
   */
  static final int LEAST_SLOTS = 24;

  /** The UDP port (ANSI E1.31-2018, 9.1: ACN_SDT_MULTICAST_PORT). */
  static final int PORT = 5568;

  private static final int ROOT = 16;
  private static final int FRAMING = 38;
  private static final int DMP = 115;
  private static final int SLOTS = 126;
  private static final int NAME_FIELD = 64;
  private static final int FLAGS = 0x7000;
  private static final int TERMINATED = 0x40;
  private static final byte[] IDENTIFIER = "ASC-E1.17\0\0\0".getBytes(StandardCharsets.US_ASCII);

  private E131Packet() {}

  /**
   * A packet.
   *
   * @param sequence its lowest eight bits are sent
   * @param terminated whether the stream ends
   * @param frame has the slice's bytes
   */
  static byte[] data(
      E131Source source, E131Slice slice, int sequence, boolean terminated, byte[] frame) {
    int slots = Math.max(LEAST_SLOTS, slice.slots());
    int bytes = SLOTS + slots;
    ByteBuffer packet = ByteBuffer.allocate(bytes);
    packet.putShort((short) 0x10).putShort((short) 0).put(IDENTIFIER);
    packet.putShort((short) (FLAGS | bytes - ROOT)).putInt(4);
    packet.putLong(source.id().getMostSignificantBits());
    packet.putLong(source.id().getLeastSignificantBits());
    packet.putShort((short) (FLAGS | bytes - FRAMING)).putInt(2);
    byte[] name = source.name().getBytes(StandardCharsets.UTF_8);
    packet.put(name).put(new byte[NAME_FIELD - name.length]);
    packet.put((byte) source.priority()).putShort((short) 0).put((byte) sequence);
    packet.put((byte) (terminated ? TERMINATED : 0)).putShort((short) slice.universe());
    packet.putShort((short) (FLAGS | bytes - DMP)).put((byte) 2).put((byte) 0xA1);
    packet.putShort((short) 0).putShort((short) 1).putShort((short) (1 + slots));
    packet.put((byte) 0).put(frame, slice.from(), slice.slots());
    return packet.array();
  }
}
