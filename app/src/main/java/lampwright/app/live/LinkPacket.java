package lampwright.app.live;

import static lampwright.exporters.live.LiveProtocol.MAX_FRAME_BYTES;
import static lampwright.exporters.live.LiveProtocol.PACKET_START;
import static lampwright.exporters.live.LiveProtocol.packetBytes;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import lampwright.exporters.live.Crc16;

/** Makes the packets of the host, which {@link lampwright.exporters.live.LiveProtocol} draws. */
public final class LinkPacket {
  private LinkPacket() {}

  /** A question: who is there? */
  public static byte[] question(int sequence) {
    return frame(sequence, new byte[0]);
  }

  /**
   * A frame.
   *
   * @param sequence its lowest eight bits are sent
   * @param frame to {@link lampwright.exporters.live.LiveProtocol#MAX_FRAME_BYTES} bytes
   */
  public static byte[] frame(int sequence, byte[] frame) {
    if (frame.length > MAX_FRAME_BYTES) {
      throw new IllegalArgumentException(
          "frame: " + frame.length + " bytes: must have at most " + MAX_FRAME_BYTES);
    }
    ByteBuffer packet =
        ByteBuffer.allocate(packetBytes(frame.length)).order(ByteOrder.LITTLE_ENDIAN);
    packet.put((byte) PACKET_START).putShort((short) frame.length).put((byte) sequence).put(frame);
    packet.putShort((short) Crc16.of(packet.array(), 1, packet.position()));
    return packet.array();
  }
}
