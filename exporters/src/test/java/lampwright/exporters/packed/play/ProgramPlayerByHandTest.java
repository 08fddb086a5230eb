package lampwright.exporters.packed.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Programs and sections of docs/packed.md whose frames, and the steps to them, come out by hand.
 */
class ProgramPlayerByHandTest {
  private static final int E1 = 0xE1;

  /** A file with one lamp from column 1 on, and one entry of a section at the given place. */
  private static byte[] playing(PackedByHand data, int section, int frames, int frameBytes) {
    int program = data.at();
    data.bytes(0xE2).entry(frames, section).bytes(0x80).lamp(1, 0);
    return data.file(frameBytes, frames, new int[] {program});
  }

  private static List<List<Integer>> frames(byte[] file, int count) {
    Unpacker unpacker = new Unpacker(file);
    byte[] buffer = new byte[unpacker.frameBytes()];
    unpacker.select(0, buffer);
    List<List<Integer>> frames = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      unpacker.frame(buffer);
      List<Integer> frame = new ArrayList<>();
      for (byte b : buffer) {
        frame.add(b & 255);
      }
      frames.add(frame);
    }
    return frames;
  }

  /** How often each step is done in each of the first frames, where at all. */
  private static List<Map<PlayerStep, Integer>> steps(byte[] file, int count) {
    List<Map<PlayerStep, Integer>> steps = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      steps.add(new EnumMap<>(PlayerStep.class));
    }
    for (PlayerStep step : PlayerStep.values()) {
      Unpacker unpacker = new Unpacker(file, new OneStep(step));
      byte[] buffer = new byte[unpacker.frameBytes()];
      unpacker.select(0, buffer);
      for (int i = 0; i < count; i++) {
        unpacker.frame(buffer);
        if (unpacker.cyclesOfLamps()[0] > 0) {
          steps.get(i).put(step, unpacker.cyclesOfLamps()[0]);
        }
      }
    }
    return steps;
  }

  /** One cycle for one step. */
  private record OneStep(PlayerStep step) implements DecodeCost {
    @Override
    public double megahertz() {
      return 1;
    }

    @Override
    public int cycles(PlayerStep other) {
      return other == step ? 1 : 0;
    }

    @Override
    public RowCost row() {
      return new RowCost(0, 0, 0, 0);
    }
  }

  private static void assertRefused(byte[] file) {
    assertThatThrownBy(() -> frames(file, 4))
        .isInstanceOfSatisfying(
            PackedDataException.class,
            e -> assertThat(e.damage()).isEqualTo(PackedDataException.Damage.CONTENTS));
  }

  /** Two rows of seven bits: 0101 10 1 and 1111 01 0 are the bytes 5B and E8. */
  private static byte[] threeRules(boolean wide) {
    PackedByHand data = new PackedByHand(wide);
    PackedByHand head = data.head().bytes(1).column(0).bytes(3, 1);
    // 10 and four bits; two bits less 1; half of column 0 and 3 and one bit.
    head.bytes(0x04, 10, 0x12, 255, 0x21, 3).column(0).bytes(128);
    head.bytes(1).column(3).column(0).bytes(2, 1);
    data.section(0, head).bytes(0xE0, 2, 0x5B, 0xE8, E1);
    return playing(data, 0, 3, 6);
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void rowsOfThreeKindsOfRules(boolean wide) {
    assertThat(frames(threeRules(wide), 5))
        .containsExactly(
            // 10 + 5; 0 - 1 + 2; 15 x 128 / 256 = 7, + 3 + 1.
            List.of(0, 15, 1, 11, 15, 1),
            // 10 + 15; 1 - 1 + 1; 25 x 128 / 256 = 12, + 3 + 0.
            List.of(0, 25, 1, 15, 25, 1),
            // The first row again, on what was there: 1 - 1 + 2.
            List.of(0, 15, 2, 11, 15, 2),
            // Rests.
            List.of(0, 15, 2, 11, 15, 2),
            List.of(0, 15, 2, 11, 15, 2));
  }

  @Test
  void stepsOfRows() {
    Map<PlayerStep, Integer> row = new EnumMap<>(PlayerStep.class);
    row.put(PlayerStep.LAMP, 1);
    row.put(PlayerStep.MOVE, 1);
    row.put(PlayerStep.ROW, 1);
    row.put(PlayerStep.BITS, 1);
    row.put(PlayerStep.ROW_GROUP, 1);
    row.put(PlayerStep.SLOT, 3);
    row.put(PlayerStep.SCALED_SLOT, 1);
    row.put(PlayerStep.BIT, 7);
    row.put(PlayerStep.NEXT_BYTE, 1);
    row.put(PlayerStep.ECHOES, 1);
    row.put(PlayerStep.ECHO, 1);
    row.put(PlayerStep.ECHO_BYTE, 2);
    // One stride of the run, and of an echo for its column and for its source.
    row.put(PlayerStep.SPAN, 3);
    Map<PlayerStep, Integer> first = new EnumMap<>(row);
    first.put(PlayerStep.INSTRUCTION, 1);
    first.put(PlayerStep.ENTRY, 1);
    Map<PlayerStep, Integer> again = new EnumMap<>(row);
    again.put(PlayerStep.INSTRUCTION, 1);
    again.put(PlayerStep.AGAIN, 1);
    Map<PlayerStep, Integer> last =
        Map.of(PlayerStep.LAMP, 1, PlayerStep.INSTRUCTION, 1, PlayerStep.ENTRY, 1);
    assertThat(steps(threeRules(false), 5))
        .containsExactly(first, row, again, last, Map.of(PlayerStep.LAMP, 1));
  }

  /**
   * Rows 1 101, 0, 0, 1 011 are the bits 1101 0010 11, which is D2 C0. Column 2 takes what column 1
   * had, so it would show echoes in a frame in which nothing changes.
   */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void flaggedRowsThatChangeNothingHaveNoEchoes(boolean wide) {
    PackedByHand data = new PackedByHand(wide);
    PackedByHand head = data.head().bytes(1).column(0).bytes(1, 0x13, 0);
    head.bytes(2).column(2).column(1).bytes(1).column(1).column(0).bytes(1);
    data.section(4, head).bytes(0xE0, 4, 0xD2, 0xC0, E1);
    byte[] file = playing(data, 0, 4, 4);
    assertThat(frames(file, 4))
        .containsExactly(
            List.of(0, 5, 5, 0), List.of(0, 5, 5, 0), List.of(0, 5, 5, 0), List.of(0, 8, 8, 5));
    List<Map<PlayerStep, Integer>> steps = steps(file, 2);
    assertThat(steps.get(1))
        .isEqualTo(
            Map.of(
                PlayerStep.LAMP, 1,
                PlayerStep.MOVE, 1,
                PlayerStep.ROW, 1,
                PlayerStep.BITS, 1,
                PlayerStep.FLAG, 1,
                PlayerStep.BIT, 1));
    assertThat(steps.get(0)).containsEntry(PlayerStep.ECHO, 2).doesNotContainKey(PlayerStep.SPAN);
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void rawRowsGoBackwardsToo(boolean wide) {
    PackedByHand data = new PackedByHand(wide);
    PackedByHand head = data.head().bytes(2).column(2).bytes(3, 255).column(4).bytes(1, 0);
    data.section(1, head).bytes(0xE0, 2, 1, 2, 3, 9, 4, 5, 6, 200, E1);
    byte[] file = playing(data, 0, 2, 6);
    assertThat(frames(file, 2))
        .containsExactly(List.of(0, 3, 2, 1, 0, 9), List.of(0, 6, 5, 4, 0, 200));
    assertThat(steps(file, 2).get(1))
        .isEqualTo(
            Map.of(
                PlayerStep.LAMP, 1,
                PlayerStep.MOVE, 1,
                PlayerStep.ROW, 1,
                PlayerStep.ROW_GROUP, 2,
                PlayerStep.SPAN, 1,
                PlayerStep.ROW_BYTE, 4,
                PlayerStep.ECHOES, 1));
  }

  /** Three columns, one apart and backwards, take each what the one before has by then. */
  @Test
  void echoesRunOnFromWhatTheyWrote() {
    PackedByHand data = new PackedByHand(false);
    PackedByHand head = data.head().bytes(1).column(4).bytes(1);
    head.bytes(1).column(3).column(4).bytes(3, 255);
    data.section(1, head).bytes(0xE0, 1, 7, E1);
    assertThat(frames(playing(data, 0, 1, 6), 1)).containsExactly(List.of(0, 0, 7, 7, 7, 7));
  }

  /**
   * Size 4, pace 3, phase 2, step 1, samples 10, 20, 30: s is 0, 3, 2, 1; q is s + 2 and one more,
   * or one less while s is at least the swing, 2. By q, kind 0 with first 1 gives 10 10 20 30, kind
   * 1 gives 10 20 30 20 and kind 2 gives 10 20 20 10.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 1, false, 20, 30, 10, 20, 10, 10, 30, 10",
    "0, 1, true, 20, 30, 10, 10, 10, 30, 30, 10",
    "1, 0, false, 30, 20, 20, 30, 10, 20, 20, 10",
    "1, 0, true, 30, 20, 20, 10, 10, 20, 20, 10",
    "2, 0, false, 20, 10, 20, 20, 10, 20, 10, 10",
    "2, 0, true, 20, 10, 20, 10, 10, 10, 10, 10",
  })
  void waves(
      int kind, int first, boolean swings, int a, int b, int c, int d, int e, int f, int g, int h) {
    for (boolean wide : new boolean[] {false, true}) {
      byte[] file = wave(wide, kind, first, swings);
      List<List<Integer>> turn =
          List.of(
              List.of(0, a, 77, b, a),
              List.of(0, c, 77, d, c),
              List.of(0, e, 77, f, e),
              List.of(0, g, 77, h, g));
      List<List<Integer>> shown = frames(file, 600);
      for (int i = 0; i < 600; i++) {
        assertThat(shown.get(i)).as("frame %d", i).isEqualTo(turn.get(i % 4));
      }
    }
  }

  private static byte[] wave(boolean wide, int kind, int first, boolean swings) {
    PackedByHand data = new PackedByHand(wide).bytes(kind, first, 0, 2, 0, 10, 20, 30);
    PackedByHand head = data.head().bytes(4, 0, 3, 0);
    if (swings) {
      head.bytes(2, 0);
    }
    head.bytes(1).place(0).column(0).bytes(2, 2, 2, 0, 1, 0);
    head.bytes(1).column(3).column(0).bytes(1);
    int section = data.at();
    data.section(swings ? 0x12 : 2, head).bytes(0x80).column(1).bytes(77, 0xE2);
    return playing(data, section, 600, 5);
  }

  /** The list is for the start of the section, not for what comes when 255 frames are over. */
  @Test
  void stepsOfWaves() {
    List<Map<PlayerStep, Integer>> steps = steps(wave(false, 0, 1, true), 256);
    Map<PlayerStep, Integer> frame =
        Map.of(
            PlayerStep.LAMP, 1,
            PlayerStep.MOVE, 1,
            PlayerStep.WAVE, 1,
            PlayerStep.WAVE_GROUP, 1,
            PlayerStep.WAVE_SLOT, 2,
            PlayerStep.SPAN, 1,
            PlayerStep.ECHOES, 1,
            PlayerStep.ECHO, 1,
            PlayerStep.ECHO_BYTE, 1);
    Map<PlayerStep, Integer> later = new EnumMap<>(frame);
    later.put(PlayerStep.INSTRUCTION, 1);
    Map<PlayerStep, Integer> first = new EnumMap<>(later);
    first.put(PlayerStep.ENTRY, 1);
    first.put(PlayerStep.PATCH, 1);
    first.put(PlayerStep.PATCH_BYTE, 1);
    assertThat(steps.get(0)).isEqualTo(first);
    assertThat(steps.get(1)).isEqualTo(frame);
    assertThat(steps.get(255)).isEqualTo(later);
  }

  /** Each number has to be less than the size; a size of 1 and of 32,767 has them. */
  @ParameterizedTest
  @CsvSource({
    "1, 0, 0, 0, 0, true",
    "4, 3, 3, 3, 3, true",
    "32767, 32766, 32766, 32766, 32766, true",
    "32768, 0, 0, 0, 0, false",
    "0, 0, 0, 0, 0, false",
    "4, 4, 0, 0, 0, false",
    "4, 0, 4, 0, 0, false",
    "4, 0, 0, 4, 0, false",
    "4, 0, 0, 0, 4, false",
  })
  void numbersOfWaves(int size, int swing, int pace, int phase, int step, boolean plays) {
    PackedByHand data = new PackedByHand(false).bytes(0, 0, 0, 0, 0, 9);
    PackedByHand head = data.head().bytes(size & 255, size >> 8, pace & 255, pace >> 8);
    head.bytes(swing & 255, swing >> 8, 1).place(0).column(0).bytes(2, 1);
    head.bytes(phase & 255, phase >> 8, step & 255, step >> 8, 0);
    int section = data.at();
    byte[] file = playing(data.section(0x12, head).bytes(0xE2), section, 5, 3);
    if (plays) {
      assertThat(frames(file, 1)).containsExactly(List.of(0, 9, 9));
    } else {
      assertRefused(file);
    }
  }

  /** Rows of two bytes; more than 255 of them, after which the program is looked at again. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void plainRowsFollowOneAnother(boolean wide) {
    PackedByHand data = new PackedByHand(wide).bytes(3, 2);
    for (int i = 0; i < 300; i++) {
      data.bytes(i % 251, i / 2);
    }
    byte[] file = playing(data, 0, 300, 4);
    List<List<Integer>> shown = frames(file, 301);
    for (int i = 0; i < 300; i++) {
      assertThat(shown.get(i)).isEqualTo(List.of(0, i % 251, i / 2, 0));
    }
    assertThat(shown.get(300)).isEqualTo(shown.get(299));
    assertThat(steps(file, 2).get(1))
        .isEqualTo(
            Map.of(
                PlayerStep.LAMP, 1,
                PlayerStep.MOVE, 1,
                PlayerStep.PLAIN, 1,
                PlayerStep.PLAIN_BYTE, 2));
  }

  /** A FILL of two bytes over five; a PATCH of the most; HOLD of 1 and of 128 frames. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void patchesFillsAndHolds(boolean wide) {
    PackedByHand data = new PackedByHand(wide).bytes(0, 0);
    data.bytes(0xC1).column(2).bytes(4, 8, 9).bytes(0x80).column(0).bytes(1).bytes(0x7F);
    data.bytes(0xBF).column(6).bytes(new int[63]).bytes(5).bytes(0x00, E1);
    byte[] file = playing(data, 0, 130, 71);
    List<List<Integer>> shown = frames(file, 130);
    Integer[] filled = new Integer[71];
    Arrays.fill(filled, 0);
    for (int[] set : new int[][] {{1, 1}, {3, 8}, {4, 9}, {5, 8}, {6, 9}, {7, 8}}) {
      filled[set[0]] = set[1];
    }
    assertThat(shown.get(0)).containsExactly(filled);
    assertThat(shown.get(127)).containsExactly(filled);
    assertThat(shown.get(129)).as("again, on what the patch left").endsWith(0, 5);
    filled[7] = 0;
    filled[70] = 5;
    assertThat(shown.get(128)).containsExactly(filled);
    assertThat(steps(file, 1).get(0))
        .isEqualTo(
            Map.of(
                PlayerStep.LAMP, 1,
                PlayerStep.INSTRUCTION, 1,
                PlayerStep.ENTRY, 1,
                PlayerStep.PATCH, 2,
                PlayerStep.PATCH_BYTE, 6));
  }

  /** The longest pattern, 32 bytes, over the most, 256. */
  @Test
  void longestFill() {
    int[] pattern = new int[32];
    Arrays.setAll(pattern, i -> i + 1);
    PackedByHand data = new PackedByHand(true).bytes(0, 0, 0xDF).column(0).bytes(255);
    byte[] file = playing(data.bytes(pattern).bytes(0, E1), 0, 1, 258);
    List<Integer> shown = frames(file, 1).get(0);
    assertThat(shown.get(0)).isZero();
    assertThat(shown.get(257)).isZero();
    for (int i = 0; i < 256; i++) {
      assertThat(shown.get(1 + i)).isEqualTo(i % 32 + 1);
    }
  }

  /** Columns of a frame of six from base 1 on: 4 is the last, which is 0 to begin with. */
  @ParameterizedTest
  @CsvSource({
    "4, 0, 0, true",
    "5, 0, 0, false",
    "0, 4, 0, true",
    "0, 5, 0, false",
    "0, 0, 5, false"
  })
  void columnsBeyondTheFrameAreRefused(int column, int source, int echo, boolean plays) {
    PackedByHand data = new PackedByHand(false);
    // Scaled by 0 and 7 more; then an echo of column 0 to itself, or from beyond.
    PackedByHand head =
        data.head().bytes(1).column(column).bytes(1, 0x20, 7).column(source).bytes(0);
    data.section(0, head.bytes(1).column(0).column(echo).bytes(1)).bytes(0xE0, 1, E1);
    byte[] file = playing(data, 0, 1, 6);
    if (plays) {
      assertThat(frames(file, 1).get(0).get(1 + column)).isEqualTo(7);
    } else {
      assertRefused(file);
    }
  }

  /** A run and an echo have at least one column, rows and programs what takes time. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void nothingOfSomethingIsRefused(int what) {
    PackedByHand data = new PackedByHand(false);
    PackedByHand head = data.head().bytes(1).column(0).bytes(what == 0 ? 0 : 1);
    head.bytes(1).column(1).column(0).bytes(what == 1 ? 0 : 1, 0);
    data.section(1, head).bytes(0xE0, what == 2 ? 0 : 1, 1, 2, 3, E1);
    assertRefused(playing(data, 0, 4, 6));
  }

  /** 1 2 2 and 3 4, over and over; a frame is sought past as many rounds as there are. */
  private static byte[] twoEntries(boolean wide, int frames) {
    PackedByHand data = new PackedByHand(wide).bytes(0, 0);
    data.bytes(0x80).column(0).bytes(1, 0x00, 0x80).column(0).bytes(2, 0x01, E1);
    int second = data.at();
    data.bytes(0, 0, 0x80).column(0).bytes(3, 0x00, 0x80).column(0).bytes(4, 0x00, E1);
    int program = data.at();
    // Its list sets column 1.
    data.bytes(0x80).column(1).bytes(50, 0xE2);
    int entries = data.at();
    data.entry(3, 0).entry(2, second).back(entries);
    int rests = data.at();
    data.bytes(0xE2).entry(3, 0).entry(2, second).bytes(0x80);
    int dark = data.at();
    data.bytes(0x80).column(1).bytes(6, 0xE2);
    data.lamp(0, 1).lampWithList(1, dark).lamp(3, 2);
    return data.file(
        6,
        frames,
        new int[] {program, PackedByHand.DARK, program},
        new int[] {rests, rests, rests});
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void lampsGoBackAndAreSought(boolean wide) {
    int[] turn = {1, 2, 2, 3, 4};
    Unpacker unpacker = new Unpacker(twoEntries(wide, 12));
    byte[] buffer = new byte[6];
    for (int from = 0; from < 12; from++) {
      Arrays.fill(buffer, (byte) 99);
      unpacker.select(2, 0, from, buffer);
      unpacker.dark(0, buffer);
      unpacker.select(1, 0, 0, buffer);
      for (int n = from; n < from + 7; n++) {
        unpacker.frame(buffer);
        // Lamp 0 clears one byte, lamp 1 sets its second with its list, lamp 2 plays from 3 on.
        assertThat(buffer).containsExactly(0, 99, 6, turn[n % 5], 50, 99);
      }
    }
    unpacker.select(0, buffer);
    unpacker.frame(buffer);
    assertThat(buffer).containsExactly(1, 50, 6, 1, 50, 0);
    assertThatThrownBy(() -> unpacker.select(0, 0, 12, buffer))
        .isInstanceOf(IndexOutOfBoundsException.class);
    assertThatThrownBy(() -> unpacker.select(0, 2, 0, buffer))
        .isInstanceOf(IndexOutOfBoundsException.class);
  }

  /** The last of five frames stays; it is sought as it is played. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void lampsThatRestAreSought(boolean wide) {
    int[] turn = {1, 2, 2, 3, 4, 4, 4};
    Unpacker unpacker = new Unpacker(twoEntries(wide, 5));
    assertThat(unpacker.loops(0)).isTrue();
    assertThat(unpacker.loops(1)).isFalse();
    assertThat(unpacker.periodMicros(1)).isEqualTo(20_000);
    assertThat(unpacker.lamps()).isEqualTo(3);
    byte[] buffer = new byte[6];
    for (int from = 0; from < 5; from++) {
      unpacker.select(0, 1, from, buffer);
      for (int n = from; n < 7; n++) {
        unpacker.frame(0, buffer);
        assertThat(buffer[0]).isEqualTo((byte) turn[n]);
      }
    }
  }

  /** A lamp from column 4 of six clears two bytes at most, and is in the frame. */
  @ParameterizedTest
  @CsvSource({"4, 2, true", "4, 3, false", "5, 1, true", "6, 0, false"})
  void lampsClearWhatIsInTheFrame(int base, int clears, boolean plays) {
    PackedByHand data = new PackedByHand(false).bytes(0).lamp(base, clears);
    byte[] file = data.file(6, 1, new int[] {PackedByHand.DARK});
    if (plays) {
      byte[] buffer = {1, 1, 1, 1, 1, 1};
      new Unpacker(file).dark(0, buffer);
      for (int i = 0; i < 6; i++) {
        assertThat(buffer[i]).isEqualTo((byte) (i < base ? 1 : 0));
      }
    } else {
      assertRefused(file);
    }
  }

  /** 130 runs of one column, of two bytes each, and two counts: 262 bytes of head. */
  @Test
  void longHeads() {
    PackedByHand data = new PackedByHand(false).bytes(9, 262 - 256, 1, 130);
    int[] row = new int[130];
    for (int i = 0; i < 130; i++) {
      data.column(i).bytes(1);
      row[i] = 200 - i;
    }
    data.bytes(0).bytes(0xE0, 1).bytes(row).bytes(E1);
    List<Integer> shown = frames(playing(data, 0, 1, 132), 1).get(0);
    for (int i = 0; i < 130; i++) {
      assertThat(shown.get(1 + i)).isEqualTo(200 - i);
    }
  }

  /** The first column of the frame is read too; an echo follows one of more than one column. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void echoesFollowOneAnother(boolean wide) {
    PackedByHand data = new PackedByHand(wide);
    PackedByHand head = data.head().bytes(1).column(0).bytes(2, 1);
    head.bytes(2).column(2).column(0).bytes(2, 1).column(4).column(3).bytes(1);
    data.section(1, head).bytes(0xE0, 1, 7, 8, E1);
    int program = data.at();
    data.bytes(0xE2).entry(1, 0).bytes(0x80).lamp(0, 0);
    byte[] file = data.file(6, 1, new int[] {program});
    assertThat(frames(file, 1)).containsExactly(List.of(7, 8, 7, 8, 8, 0));
  }

  /** A group from column 1 on, and one from column 0 with its phase one on. */
  @Test
  void groupsOfWavesHaveTheirColumns() {
    PackedByHand data = new PackedByHand(false).bytes(0, 0, 0, 2, 0, 10, 20, 30);
    PackedByHand head = data.head().bytes(3, 0, 1, 0, 2);
    head.place(0).column(1).bytes(1, 0, 0).place(0).column(0).bytes(1, 1, 0).bytes(0);
    int section = data.at();
    byte[] file = playing(data.section(2, head).bytes(0xE2), section, 3, 3);
    assertThat(frames(file, 3))
        .containsExactly(List.of(0, 20, 10), List.of(0, 30, 20), List.of(0, 10, 30));
  }

  /** A pattern of one byte over three columns, then rows of all eight bits. */
  @Test
  void shortestPatternAndWidestRule() {
    PackedByHand data = new PackedByHand(false);
    PackedByHand head = data.head().bytes(1).column(3).bytes(1, 0x08, 1, 0);
    data.section(0, head).bytes(0xC0).column(0).bytes(2, 5).bytes(0xE0, 2, 200, 255, E1);
    assertThat(frames(playing(data, 0, 2, 5), 2))
        .containsExactly(List.of(0, 5, 5, 5, 201), List.of(0, 5, 5, 5, 0));
  }

  /** An entry plays 4,096 frames: hold 128, over and over. */
  @Test
  void longestEntry() {
    PackedByHand data = new PackedByHand(false).bytes(0, 0, 0x80).column(0).bytes(3, 0x7F, E1);
    byte[] file = playing(data, 0, 4096, 2);
    assertThat(frames(file, 4097).get(4096)).isEqualTo(List.of(0, 3));
    byte[] buffer = new byte[2];
    new Unpacker(file).select(0, 0, 4095, buffer);
    assertThat(buffer).containsExactly(0, 3);
  }

  /** Where AGAIN should be come the tables, whose first byte, 1, would be a hold. */
  @Test
  void contentsEndBeforeTheTables() {
    PackedByHand data = new PackedByHand(false);
    data.bytes(0xE2).entry(2, 6).bytes(0x80).bytes(0, 0, 0x00).lamp(1, 0);
    assertRefused(data.file(2, 2, new int[] {0}));
  }

  /** A show that there isn't, and a ceiling without a show. */
  @ParameterizedTest
  @ValueSource(ints = {4, 8, 12})
  void flagsOfWhatIsNotThere(int flags) {
    byte[] file = threeRules(false);
    file[7] = (byte) flags;
    assertRefused(DamagedData.sealed(file));
  }

  /** Each damage of a header by its name; what is wrong first counts. */
  @ParameterizedTest
  @CsvSource({
    "0, 88, NOT_PACKED",
    "1, 88, NOT_PACKED",
    "2, 88, CHECKSUM",
    "5, 88, CHECKSUM",
    "6, 1, VERSION",
    "6, 3, VERSION",
    "7, 16, VERSION",
    "12, 1, SIZE",
    "13, 1, SIZE",
    "20, 1, CHECKSUM",
  })
  void headersSayWhatIsWrong(int at, int value, PackedDataException.Damage damage) {
    byte[] file = threeRules(false);
    file[at] = (byte) value;
    assertThatThrownBy(() -> new Unpacker(file))
        .isInstanceOfSatisfying(
            PackedDataException.class, e -> assertThat(e.damage()).isEqualTo(damage));
  }
}
