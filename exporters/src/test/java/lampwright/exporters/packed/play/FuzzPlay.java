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
 *
 * <p>Data with a show is played by its situations instead, for as many frames. The second byte is
 * the number of bytes at the end of the input that are readings, two each, which come round: bits 0
 * to 2 of the first are the input, bits 3 and 4 how many frames pass before the reading after it,
 * bits 5 and 6 what the second is: a width near the middle, a level, any width at all, or any input
 * at all.
 */
public final class FuzzPlay {
  /** Bytes of what to do. */
  static final int DOES = 4;

  private static final int MOST = 70_000;
  private static final byte BEHIND = 0x5A;

  private FuzzPlay() {}

  /** Plays one input. */
  public static void fuzzerTestOneInput(byte[] input) {
    if (input.length < DOES + Format.LEAST_BYTES || input.length > DOES + MOST) {
      return;
    }
    boolean show = (input[DOES + Format.FLAGS_AT] & Format.SHOW) != 0;
    int readings = show ? Math.min(input[1] & 255, input.length - DOES - Format.LEAST_BYTES) : 0;
    int end = input.length - readings;
    try {
      byte[] data = mended(Arrays.copyOfRange(input, DOES, end), (input[0] & 1) != 0);
      if (show) {
        playShow(data, frames(input), Arrays.copyOfRange(input, end, input.length));
      } else {
        play(data, input);
      }
    } catch (PackedDataException refused) {
      if (refused.damage() != PackedDataException.Damage.CONTENTS) {
        throw new IllegalStateException("refused for another reason", refused);
      }
    }
  }

  private static int frames(byte[] does) {
    return (1 << ((does[0] & 255) >> 5)) - 1;
  }

  /** A frame buffer with a byte behind it. */
  private static byte[] buffer(int frameBytes) {
    byte[] buffer = new byte[frameBytes + 1];
    buffer[frameBytes] = BEHIND;
    return buffer;
  }

  private static void mustEnd(byte[] buffer) {
    if (buffer[buffer.length - 1] != BEHIND) {
      throw new IllegalStateException("wrote past the frame");
    }
  }

  private static void playShow(byte[] data, int frames, byte[] readings) {
    ShowPlayer player = new ShowPlayer(data);
    int inputs = player.room().inputs();
    byte[] buffer = buffer(player.frameBytes());
    int count = readings.length / 2;
    int next = 0;
    int wait = 0;
    for (int f = 0; f < frames; f++) {
      for (int taken = 0; taken < count && wait == 0; taken++) {
        wait = take(player, inputs, readings[2 * next] & 255, readings[2 * next + 1] & 255);
        next = (next + 1) % count;
      }
      wait -= wait == 0 ? 0 : 1;
      player.frame(buffer);
      if (player.sent(buffer).length != player.frameBytes()) {
        throw new IllegalStateException("a frame of another length is sent");
      }
    }
    mustEnd(buffer);
  }

  /** Takes a reading; gives how many frames pass before the one after it. */
  private static int take(ShowPlayer player, int inputs, int does, int value) {
    int kind = does >> 5 & 3;
    int input = kind == 3 ? value : does & 7;
    if (input < inputs) {
      player.take(
          input,
          switch (kind) {
            case 0 -> 1245 + 2 * value;
            case 1 -> value & 1;
            case 2 -> 257 * value;
            default -> 1500;
          });
    }
    return does >> 3 & 3;
  }

  private static void play(byte[] data, byte[] does) {
    Unpacker unpacker = new Unpacker(data);
    byte[] buffer = buffer(unpacker.frameBytes());
    int scene = ((does[0] >> 1) & 15) % unpacker.scenes();
    int lamp = (does[1] & 255) % unpacker.lamps();
    int frame = ((does[2] & 255) | (does[3] & 255) << 8) % unpacker.frames(scene);
    for (int i = 0; i < unpacker.lamps(); i++) {
      unpacker.select(i, scene, 0, buffer);
    }
    for (int i = frames(does); i > 0; i--) {
      unpacker.frame(buffer);
    }
    unpacker.select(lamp, scene, frame, buffer);
    unpacker.frame(buffer);
    unpacker.select(0, scene, unpacker.frames(scene) - 1, buffer);
    unpacker.frame(buffer);
    unpacker.dark(lamp, buffer);
    mustEnd(buffer);
  }

  /**
   * Makes the header fit the data, and then the checksum. Where the tables of a show end isn't
   * known, so they are moved by as much as the data is longer than it says.
   */
  private static byte[] mended(byte[] data, boolean tablesToo) {
    data[0] = Format.MAGIC_0;
    data[1] = Format.MAGIC_1;
    data[Format.VERSION_AT] = Format.VERSION;
    data[Format.FLAGS_AT] &= Format.FLAGS;
    int place = (data[Format.FLAGS_AT] & Format.WIDE_PLACES) != 0 ? 3 : 2;
    int column = (data[Format.FLAGS_AT] & Format.WIDE_COLUMNS) != 0 ? 2 : 1;
    int lamps = data[Format.LAMPS_AT] & 255;
    int scenes = data[Format.SCENES_AT] & 255;
    int tables = lamps * (column + place) + scenes * (Format.SCENE_BYTES + lamps * place);
    int longer = data.length - number(data, Format.SIZE_AT, place);
    put(data, Format.SIZE_AT, data.length, place);
    if (tablesToo && (data[Format.FLAGS_AT] & Format.SHOW) != 0) {
      int at = Format.SIZE_AT + place;
      put(data, at, number(data, at, place) + longer, place);
    } else if (tablesToo && tables < data.length) {
      put(data, Format.SIZE_AT + place, data.length - tables, place);
    }
    return DamagedData.sealed(data);
  }

  private static int number(byte[] data, int at, int bytes) {
    int value = 0;
    for (int i = 0; i < bytes; i++) {
      value |= (data[at + i] & 255) << (8 * i);
    }
    return value;
  }

  private static void put(byte[] data, int at, int value, int bytes) {
    for (int i = 0; i < bytes; i++) {
      data[at + i] = (byte) (value >> (8 * i));
    }
  }
}
