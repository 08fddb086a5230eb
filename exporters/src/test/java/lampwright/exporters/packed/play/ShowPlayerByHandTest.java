package lampwright.exporters.packed.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Small shows written byte by byte from docs/packed.md, whose frames come out by hand. */
class ShowPlayerByHandTest {
  private static final int NONE = 255;
  private static final int SWITCH = 2;

  /** Behind the scene of one lamp: a head, then what is given. */
  private static byte[] data(ByteSink show) {
    byte[] data = new ByteSink().all(DamagedData.whole()).all(show.toBytes()).toBytes();
    data[Format.FLAGS_AT] |= Format.SHOW;
    data[Format.SIZE_AT] = (byte) data.length;
    data[Format.SIZE_AT + 1] = (byte) (data.length >> 8);
    return DamagedData.sealed(data);
  }

  private static ByteSink head(int timeBytes, int inputs, int centres, int situations, int slots) {
    return new ByteSink().u8(timeBytes).u8(inputs).u8(centres).u8(situations).u8(slots).u8(1);
  }

  private static boolean frame(ShowPlayer player, int situation) {
    player.frame(new byte[8]);
    return player.active(situation);
  }

  /** A channel that learns, and a situation that is active at its centre alone. */
  private static ShowPlayer atItsCentre() {
    ByteSink show = head(1, 1, 1, 1, 0).u8(1).u8(50).u8(0).u8(NONE);
    show.u8(0).u8(1).u8(1).u8(0).u16(1500).u16(1500).u16(0);
    return new ShowPlayer(data(show.u8(1).u8(0)));
  }

  /** The centre is that of sixteen widths, or 1,500 if that is not 1,400 to 1,600. */
  @ParameterizedTest
  @CsvSource({"1399, false", "1400, true", "1500, true", "1600, true", "1601, false"})
  void centreIsLearntWithinItsRange(int width, boolean active) {
    ShowPlayer player = atItsCentre();
    for (int i = 0; i < 15; i++) {
      player.take(0, width);
      assertThat(frame(player, 0)).isFalse();
    }
    player.take(0, width);
    assertThat(frame(player, 0)).isEqualTo(active);
    player.take(0, 1500);
    assertThat(frame(player, 0)).isEqualTo(width == 1500 || !active);
  }

  /** Fifteen of 1,500 and one of 1,515 are 24,015; a sixteenth, rounded down, is 1,500. */
  @Test
  void centreIsRoundedDown() {
    ShowPlayer player = atItsCentre();
    for (int i = 0; i < 15; i++) {
      player.take(0, 1500);
    }
    player.take(0, 1515);
    assertThat(frame(player, 0)).isFalse();
    player.take(0, 1500);
    assertThat(frame(player, 0)).isTrue();
  }

  /** A width outside 800 to 2,200 us is no reading; what is read is lost after so many frames. */
  @ParameterizedTest
  @CsvSource({"799, false", "800, true", "2200, true", "2201, false"})
  void widthsOfNoServoAreIgnored(int width, boolean read) {
    ByteSink show = head(1, 1, 0, 1, 0).u8(0).u8(2).u8(NONE).u8(NONE);
    // LOST.
    ShowPlayer player = new ShowPlayer(data(show.u8(0).u8(1).u8(2).u8(0).u8(0)));
    player.take(0, width);
    assertThat(frame(player, 0)).isEqualTo(!read);
    assertThat(frame(player, 0)).isEqualTo(!read);
    assertThat(frame(player, 0)).isTrue();
  }

  /** A sample counts once it was the same one frame before. */
  @Test
  void switchIsOnAfterTwoSamples() {
    ByteSink show = head(1, 1, 0, 1, 0).u8(SWITCH).u8(0).u8(NONE).u8(NONE);
    ShowPlayer player = new ShowPlayer(data(show.u8(0).u8(1).u8(3).u8(0).u8(0)));
    player.take(0, 1);
    assertThat(frame(player, 0)).isFalse();
    assertThat(frame(player, 0)).isTrue();
    player.take(0, 0);
    player.take(0, 1);
    assertThat(frame(player, 0)).isTrue();
    player.take(0, 0);
    assertThat(frame(player, 0)).isTrue();
    assertThat(frame(player, 0)).isFalse();
  }

  /**
   * CLOCK and ASKED in one slot: in the frame in which the first is no longer active the slot is 3,
   * then 2, 1 and 0, and as long as it is above 0 the second is active.
   */
  @Test
  void clockAndWhatIsAskedShareASlot() {
    ByteSink show = head(1, 1, 0, 2, 1).u8(SWITCH).u8(0).u8(0).u8(0).u8(NONE).u8(NONE);
    show.u8(16 + 64).u8(1).u8(3).u8(0).u8(0).u8(9).u8(0).u8(3);
    show.u8(0).u8(1).u8(5).u8(0).u8(0).u8(0);
    ShowPlayer player = new ShowPlayer(data(show.u8(1).u8(0)));
    player.take(0, 1);
    boolean[] first = new boolean[9];
    boolean[] second = new boolean[9];
    for (int f = 0; f < first.length; f++) {
      if (f == 3) {
        player.take(0, 0);
      }
      first[f] = frame(player, 0);
      second[f] = player.active(1);
    }
    assertThat(first).containsExactly(false, true, true, true, false, false, false, false, false);
    assertThat(second).containsExactly(false, false, false, false, true, true, true, false, false);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 3, 5, 8})
  void timesOfOtherWidthsAreRefused(int timeBytes) {
    byte[] data = data(head(timeBytes, 0, 0, 0, 0).u8(0));
    assertThatThrownBy(() -> new ShowPlayer(data)).isInstanceOf(PackedDataException.class);
    assertThat(new ShowPlayer(data(head(2, 0, 0, 0, 0).u8(0))).room().timeBytes()).isEqualTo(2);
  }

  /** NEVER, LOST and ON are kinds of two bytes; 6 and 63 are none. */
  @ParameterizedTest
  @CsvSource({"0, true", "2, true", "3, true", "6, false", "63, false"})
  void kindsOfConditionsAreThoseOfTheFormat(int kind, boolean played) {
    ByteSink show = head(1, 1, 0, 1, 0).u8(SWITCH).u8(0).u8(NONE).u8(NONE);
    byte[] data = data(show.u8(0).u8(1).u8(kind).u8(0).u8(0));
    if (played) {
      assertThat(frame(new ShowPlayer(data), 0)).isEqualTo(kind == 2);
    } else {
      assertThatThrownBy(() -> new ShowPlayer(data)).isInstanceOf(PackedDataException.class);
    }
  }

  /**
   * Bits of LAMPWRIGHT_USES: centres 0x200, others 0x800; a show of ON alone has switches, 0x100.
   */
  @Test
  void firmwareHasWhatAShowUses() {
    assertThat(atItsCentre().room().uses()).isEqualTo(0x200);
    ByteSink on = head(1, 1, 0, 1, 0).u8(SWITCH).u8(0).u8(NONE).u8(NONE);
    assertThat(ShowRoom.of(data(on.u8(0).u8(1).u8(3).u8(0).u8(0))).uses()).isEqualTo(0x100);
    ByteSink lost = head(1, 1, 0, 1, 0).u8(0).u8(2).u8(NONE).u8(NONE);
    assertThat(ShowRoom.of(data(lost.u8(0).u8(1).u8(2).u8(0).u8(0))).uses()).isZero();
    ByteSink active = head(1, 0, 0, 2, 0).u8(NONE).u8(NONE).u8(NONE).u8(NONE).u8(0).u8(0);
    assertThat(ShowRoom.of(data(active.u8(1).u8(1).u8(4).u8(0).u8(0))).uses()).isEqualTo(0x801);
  }

  /** At most 254 inputs and situations, as 255 is no number of one. */
  @ParameterizedTest
  @CsvSource({"254, 0", "255, 0", "0, 254", "0, 255"})
  void oneNumberIsNone(int inputs, int situations) {
    ByteSink show = head(1, inputs, 0, situations, 0);
    for (int i = 0; i < inputs; i++) {
      show.u8(0).u8(1);
    }
    for (int i = 0; i < situations; i++) {
      show.u8(NONE).u8(NONE);
    }
    for (int i = 0; i < situations; i++) {
      show.u8(0).u8(0);
    }
    byte[] data = data(show.u8(0));
    if (Math.max(inputs, situations) == NONE) {
      assertThatThrownBy(() -> new ShowPlayer(data)).isInstanceOf(PackedDataException.class);
    } else {
      assertThat(new ShowPlayer(data).room().inputs()).isEqualTo(inputs);
    }
  }

  /** Times of four bytes are below 2^31 here. */
  @ParameterizedTest
  @CsvSource({"0x7F, true", "0x80, false"})
  void longestTimeIsPlayed(String highByte, boolean played) {
    byte[] data = data(head(4, 1, 0, 0, 0).u8(0).u24(0xFFFFFF).u8(Integer.decode(highByte)).u8(0));
    if (played) {
      assertThat(new ShowPlayer(data).room().timeBytes()).isEqualTo(4);
    } else {
      assertThatThrownBy(() -> new ShowPlayer(data)).isInstanceOf(PackedDataException.class);
    }
  }
}
