package lampwright.exporters.packed.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import lampwright.exporters.packed.format.ByteSink;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Each rule of docs/packed.md for shows and ceilings, broken by one byte. */
class DamagedShowTest {
  private static final int FRAME_BYTES = 8;
  private static final int FRAMES = 14;
  private static final int ON_US = 1700;

  @TempDir Path dir;

  static Stream<Arguments> refused() {
    return Stream.of(DamagedShow.seenByAll(), DamagedShow.seenByTheDecoder())
        .flatMap(cases -> cases.entrySet().stream())
        .map(one -> Arguments.of(one.getKey(), one.getValue()));
  }

  @ParameterizedTest
  @MethodSource("refused")
  void decoderRefusesAsItOpens(String name, byte[] data) {
    assertThatThrownBy(() -> new ShowPlayer(data))
        .isInstanceOfSatisfying(
            PackedDataException.class,
            e -> assertThat(e.damage()).isEqualTo(PackedDataException.Damage.CONTENTS));
  }

  /**
   * By hand: the conditions hold in frames 0 to 9 (lost after 10), the situation from frame 2, and
   * lingers for 3 frames counted from frame 9. The scene's bytes are 1 and 2, S = 100 + 2 x 50 =
   * 200, above 150, so f = 150 / 1: sent are 150 / 256 = 0 and 300 / 256 = 1.
   */
  @Test
  void wholeShowIsPlayed() {
    ShowPlayer player = new ShowPlayer(DamagedShow.whole());
    byte[] buffer = new byte[FRAME_BYTES];
    player.take(0, ON_US);
    for (int f = 0; f < FRAMES; f++) {
      player.frame(buffer);
      boolean lit = f >= 2 && f < 12;
      assertThat(buffer).as("frame %d", f).startsWith(lit ? 1 : 0, lit ? 2 : 0, 0, 0);
      assertThat(player.sent(buffer)).as("sent %d", f).startsWith(0, lit ? 1 : 0, 0, 0);
    }
  }

  @Test
  void weightsMayAddUpToLessThan32Bits() {
    ShowPlayer player = new ShowPlayer(DamagedShow.heaviest(257));
    byte[] buffer = new byte[257];
    player.frame(buffer);
    // S = 65,535 x 255, in 256ths 65,279: f = 1000 / 65,279 = 0.
    buffer[256] = (byte) 255;
    assertThat(player.sent(buffer)).containsOnly(0);
    assertThatThrownBy(() -> new ShowPlayer(DamagedShow.heaviest(258)))
        .isInstanceOf(PackedDataException.class);
  }

  /** The most that there may be of what takes no bytes. */
  @ParameterizedTest
  @ValueSource(strings = {"slots 254", "centres 64", "memory 255", "high byte of from 77"})
  void mostIsPlayed(String change) {
    int space = change.lastIndexOf(' ');
    int value = Integer.parseInt(change.substring(space + 1));
    new ShowPlayer(DamagedShow.with(change.substring(0, space), value));
  }

  /** With the room that the whole show needs, as firmware has it. */
  @Test
  void portablePlayerRefusesWhatItMeets() throws IOException, InterruptedException {
    List<String> room = new ArrayList<>(List.of("-DLAMPWRIGHT_INPUTS=3"));
    room.addAll(List.of("-DLAMPWRIGHT_CENTRES=1", "-DLAMPWRIGHT_SITUATIONS=2"));
    room.addAll(List.of("-DLAMPWRIGHT_SLOTS=7", "-DLAMPWRIGHT_CONDITION_BYTES=1"));
    room.add("-DLAMPWRIGHT_TIME_BYTES=2");
    Path program = ShowPlayerTest.portable(dir, room.toArray(String[]::new));
    ByteSink in = new ByteSink();
    play(in, DamagedShow.whole());
    Map<String, byte[]> refused = DamagedShow.seenByAll();
    refused.values().forEach(data -> play(in, data));
    String run = program.toString();
    assertThat(AvrSituations.execute(dir, List.of(run), heaviest(257))).containsOnly(0);
    assertThat(AvrSituations.execute(dir, List.of(run), heaviest(258))).startsWith(6);
    byte[] out = AvrSituations.execute(dir, List.of(run), in.toBytes());
    int each = FRAMES * (1 + FRAME_BYTES);
    assertThat(out).hasSize(each * (1 + refused.size()));
    ByteArrayOutputStream whole = new ByteArrayOutputStream();
    for (int f = 0; f < FRAMES; f++) {
      whole.writeBytes(new byte[] {0, 0, (byte) (f >= 2 && f < 12 ? 1 : 0), 0, 0, 0, 0, 0, 0});
    }
    assertThat(Arrays.copyOf(out, each)).isEqualTo(whole.toByteArray());
    int end = each;
    for (String name : refused.keySet()) {
      end += each;
      byte[] last = Arrays.copyOfRange(out, end - 1 - FRAME_BYTES, end);
      assertThat(last[0]).as(name).isIn((byte) 5, (byte) 6); // LAMPWRIGHT_LIMIT, LAMPWRIGHT_FAULT
      assertThat(Arrays.copyOfRange(last, 1, last.length)).as(name).containsOnly(0);
    }
  }

  private static byte[] heaviest(int columns) {
    byte[] data = DamagedShow.heaviest(columns);
    ByteSink in = new ByteSink().number(data.length, 4).all(data).u16(columns);
    return in.number(1, 4).u16(0).u16(0).toBytes();
  }

  /** A case of situations_check.c: one reading before the first frame. */
  private static void play(ByteSink in, byte[] data) {
    in.number(data.length, 4).all(data).u16(FRAME_BYTES).number(FRAMES, 4).u16(0);
    in.u16(1).u8(0).u16(ON_US);
    for (int f = 1; f < FRAMES; f++) {
      in.u16(0);
    }
  }
}
