package lampwright.app.live;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A controller as docs/live.md has it, written from there alone: its own packets, answers and CRC.
 * Bytes go in, answers come out; it knows no time but the gap that ends a packet, which it is told
 * of.
 */
final class SimulatedController {
  private final int frameBytes;
  private final int layout;
  private final int version;
  private final List<byte[]> shown = new ArrayList<>();
  private final List<Byte> packet = new ArrayList<>();
  private int lastSequence = -1;
  private int questions;

  SimulatedController(int frameBytes, int layout, int version) {
    this.frameBytes = frameBytes;
    this.layout = layout;
    this.version = version;
  }

  /** The frames that it showed, in order. */
  List<byte[]> shown() {
    return shown;
  }

  int questions() {
    return questions;
  }

  /** Nothing came for 50 ms. */
  void gap() {
    packet.clear();
  }

  /** Takes a byte; gives the answer if it was the last of a packet. */
  Optional<byte[]> take(byte next) {
    packet.add(next);
    if ((packet.get(0) & 0xFF) != 0xA7) {
      packet.clear();
    }
    if (packet.size() < 3) {
      return Optional.empty();
    }
    int length = (packet.get(1) & 0xFF) + 256 * (packet.get(2) & 0xFF);
    if (length != 0 && length != frameBytes) {
      packet.clear();
      return Optional.empty();
    }
    if (packet.size() < 6 + length) {
      return Optional.empty();
    }
    byte[] whole = new byte[packet.size()];
    for (int i = 0; i < whole.length; i++) {
      whole[i] = packet.get(i);
    }
    packet.clear();
    int crc = crc(Arrays.copyOfRange(whole, 1, whole.length - 2));
    int came = (whole[whole.length - 2] & 0xFF) + 256 * (whole[whole.length - 1] & 0xFF);
    if (crc != came) {
      return Optional.empty();
    }
    int sequence = whole[3] & 0xFF;
    if (length == 0) {
      questions++;
      lastSequence = -1;
      return Optional.of(
          answer(
              1,
              sequence,
              version,
              0,
              frameBytes & 0xFF,
              frameBytes >> 8,
              layout & 0xFF,
              layout >> 8));
    }
    if (sequence != lastSequence) {
      shown.add(Arrays.copyOfRange(whole, 4, 4 + length));
    }
    lastSequence = sequence;
    return Optional.of(answer(2, sequence));
  }

  static byte[] answer(int... values) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Arrays.stream(values).forEach(out::write);
    int crc = crc(out.toByteArray());
    byte[] body = out.toByteArray();
    byte[] all = new byte[body.length + 3];
    all[0] = 0x7A;
    System.arraycopy(body, 0, all, 1, body.length);
    all[all.length - 2] = (byte) crc;
    all[all.length - 1] = (byte) (crc >> 8);
    return all;
  }

  /** The CRC in its other form: highest bit first, input and output mirrored. */
  static int crc(byte[] bytes) {
    int crc = 0xFFFF;
    for (byte b : bytes) {
      crc ^= Integer.reverse(b & 0xFF) >>> 24 << 8;
      for (int i = 0; i < 8; i++) {
        crc = ((crc << 1) ^ ((crc & 0x8000) != 0 ? 0x1021 : 0)) & 0xFFFF;
      }
    }
    return Integer.reverse(crc) >>> 16;
  }
}
