package lampwright.app.live;

import static lampwright.exporters.live.LiveProtocol.ANSWER_START;
import static lampwright.exporters.live.LiveProtocol.CRC_BYTES;
import static lampwright.exporters.live.LiveProtocol.HERE;
import static lampwright.exporters.live.LiveProtocol.HERE_BYTES;
import static lampwright.exporters.live.LiveProtocol.TAKEN;
import static lampwright.exporters.live.LiveProtocol.TAKEN_BYTES;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.Consumer;
import lampwright.exporters.live.Crc16;

/**
 * Finds the answers of a controller in whatever comes from the line, which {@link
 * lampwright.exporters.live.LiveProtocol} draws. A damaged answer hides none that follows it.
 */
final class AnswerReader {
  private final byte[] kept = new byte[HERE_BYTES];
  private int length;
  private long damaged;

  /** Answers that were whole but for their CRC. */
  long damaged() {
    return damaged;
  }

  /** Forgets what has begun. */
  void clear() {
    length = 0;
  }

  /** Reads the first so many bytes, and hands over the answers that end in them. */
  void take(byte[] bytes, int count, Consumer<Answer> found) {
    Objects.checkFromIndexSize(0, count, bytes.length);
    for (int i = 0; i < count; i++) {
      kept[length++] = bytes[i];
      // What is left after an answer that was none may be the start of one.
      while (length > 0 && !mayBegin()) {
        drop(1);
      }
      if (length > 1 && length == wanted()) {
        whole(found);
      }
    }
  }

  private boolean mayBegin() {
    return (kept[0] & 0xFF) == ANSWER_START && (length == 1 || wanted() > 0);
  }

  // The bytes of an answer of this kind; 0 if there is no such kind.
  private int wanted() {
    return switch (kept[1]) {
      case HERE -> HERE_BYTES;
      case TAKEN -> TAKEN_BYTES;
      default -> 0;
    };
  }

  private void whole(Consumer<Answer> found) {
    int end = length - CRC_BYTES;
    ByteBuffer answer = ByteBuffer.wrap(kept).order(ByteOrder.LITTLE_ENDIAN);
    if (Crc16.of(kept, 1, end) == Short.toUnsignedInt(answer.getShort(end))) {
      found.accept(answer(answer));
      length = 0;
      return;
    }
    damaged++;
    do {
      drop(1);
    } while (length > 0 && !mayBegin());
    if (length > 1 && length >= wanted()) {
      // A short answer within what looked like a long one.
      byte[] rest = Arrays.copyOf(kept, length);
      length = 0;
      take(rest, rest.length, found);
    }
  }

  private static Answer answer(ByteBuffer bytes) {
    int sequence = Byte.toUnsignedInt(bytes.get(2));
    return bytes.get(1) == TAKEN
        ? new Answer.Taken(sequence)
        : new Answer.Here(
            sequence,
            Byte.toUnsignedInt(bytes.get(3)),
            Byte.toUnsignedInt(bytes.get(4)),
            new LinkIdentity(
                Short.toUnsignedInt(bytes.getShort(5)), Short.toUnsignedInt(bytes.getShort(7))));
  }

  private void drop(int count) {
    length -= count;
    System.arraycopy(kept, count, kept, 0, length);
  }
}
