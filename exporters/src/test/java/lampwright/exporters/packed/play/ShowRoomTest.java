package lampwright.exporters.packed.play;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Room for the show of {@link DamagedShow}, counted by hand; bits as lampwright_situations.c. */
class ShowRoomTest {
  /** ANY, AFTER, LINGERS, CLOCK and ASKED. */
  private static final int FLAGS = 1 + 4 + 8 + 16 + 64;

  private static final int SWITCHES = 0x100;
  private static final int CENTRES = 0x200;
  private static final int TAPS = 0x400;
  private static final int OTHERS = 0x800;
  private static final int ENDED = 0x1000;

  @Test
  void roomIsWhatTheShowAsksFor() {
    ShowRoom room = ShowRoom.of(DamagedShow.whole());
    int uses = FLAGS + SWITCHES + CENTRES + TAPS + OTHERS + ENDED;
    assertThat(room).isEqualTo(new ShowRoom(2, 3, 1, 2, 7, 1, uses));
  }

  /** Kind 0 is a channel: no switch is left. */
  @Test
  void whatNoInputIsIsNotUsed() {
    int uses = FLAGS + CENTRES + TAPS + OTHERS + ENDED;
    assertThat(ShowRoom.of(DamagedShow.with("switch", 0)).uses()).isEqualTo(uses);
  }

  /**
   * A width and a count-down of 1, 2 or 4 bytes for each of 3 inputs, in C in steps of 2 or 4; a
   * centre; 5 counters; a byte of memory; 2 situations; the number of the frame.
   */
  @ParameterizedTest
  @CsvSource({"1, 22, 26", "2, 30, 31", "4, 46, 53"})
  void workingMemoryIsThatOfItsCounters(int timeBytes, int assembler, int portable) {
    ShowRoom room = new ShowRoom(timeBytes, 3, 1, 2, 5, 1, 0);
    assertThat(room.assemblerBytes()).isEqualTo(assembler);
    assertThat(room.portableBytes()).isEqualTo(portable);
  }

  /** No array of C is empty. */
  @Test
  void emptyShowTakesAByteOfEach() {
    ShowRoom room = new ShowRoom(1, 0, 0, 0, 0, 0, 0);
    assertThat(room.assemblerBytes()).isEqualTo(1 + 3 + 1 + 4);
    assertThat(room.portableBytes()).isEqualTo(1 + 4 + 2 + 1 + 4);
  }
}
