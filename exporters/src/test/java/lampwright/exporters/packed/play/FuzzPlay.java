package lampwright.exporters.packed.play;

import java.util.Arrays;
import lampwright.exporters.packed.format.Format;

/**
 * Plays whatever bytes come, with the checksum and the sizes made right. The decoder may refuse
 * with {@link PackedDataException}; any other exception is a fault, and so is a write past the
 * frame. Entry of Jazzer, which calls a public method of this name.
 *
 * <p>An input is as in {@code src/test/c/fuzz_player.c}: 4 bytes of what to do, then packed data.
 * Bit 0 of the first moves the tables to where the data's end wants them, bits 1 to 4 choose the
 * scene, bits 5 to 7 how many frames are played first (0 to 127); the second chooses a lamp, the
 * others the frame that it is started at.
 */
public final class FuzzPlay {
  /** Bytes of what to do. */
  static final int DOES = 4;

  private static final int MOST = 70_000;

  private FuzzPlay() {}

  /** Plays one input. */
  public static void fuzzerTestOneInput(byte[] input) {
    if (input.length < DOES + Format.LEAST_BYTES || input.length > DOES + MOST) {
      return;
    }
    try {
      play(mended(input), input);
    } catch (PackedDataException refused) {
      if (refused.damage() != PackedDataException.Damage.CONTENTS) {
        throw new IllegalStateException("refused for another reason", refused);
      }
    }
  }

  private static void play(byte[] data, byte[] does) {
    Unpacker unpacker = new Unpacker(data);
    byte[] buffer = new byte[unpacker.frameBytes() + 1];
    buffer[buffer.length - 1] = 0x5A;
    int scene = ((does[0] >> 1) & 15) % unpacker.scenes();
    int lamp = (does[1] & 255) % unpacker.lamps();
    int frame = ((does[2] & 255) | (does[3] & 255) << 8) % unpacker.frames(scene);
    for (int i = 0; i < unpacker.lamps(); i++) {
      unpacker.select(i, scene, 0, buffer);
    }
    for (int i = (1 << ((does[0] & 255) >> 5)) - 1; i > 0; i--) {
      unpacker.frame(buffer);
    }
    unpacker.select(lamp, scene, frame, buffer);
    unpacker.frame(buffer);
    unpacker.select(0, scene, unpacker.frames(scene) - 1, buffer);
    unpacker.frame(buffer);
    unpacker.dark(lamp, buffer);
    if (buffer[buffer.length - 1] != 0x5A) {
      throw new IllegalStateException("wrote past the frame");
    }
  }

  /** The packed data of an input; its header made to fit, and then its checksum. */
  private static byte[] mended(byte[] input) {
    byte[] data = Arrays.copyOfRange(input, DOES, input.length);
    data[0] = Format.MAGIC_0;
    data[1] = Format.MAGIC_1;
    data[Format.VERSION_AT] = Format.VERSION;
    data[Format.FLAGS_AT] &= Format.WIDE_COLUMNS | Format.WIDE_PLACES;
    int place = (data[Format.FLAGS_AT] & Format.WIDE_PLACES) != 0 ? 3 : 2;
    int column = (data[Format.FLAGS_AT] & Format.WIDE_COLUMNS) != 0 ? 2 : 1;
    int lamps = data[Format.LAMPS_AT] & 255;
    int scenes = data[Format.SCENES_AT] & 255;
    int tables = lamps * (column + place) + scenes * (Format.SCENE_BYTES + lamps * place);
    put(data, Format.SIZE_AT, data.length, place);
    if ((input[0] & 1) != 0 && tables < data.length) {
      put(data, Format.SIZE_AT + place, data.length - tables, place);
    }
    return DamagedData.sealed(data);
  }

  private static void put(byte[] data, int at, int value, int bytes) {
    for (int i = 0; i < bytes; i++) {
      data[at + i] = (byte) (value >> (8 * i));
    }
  }
}
