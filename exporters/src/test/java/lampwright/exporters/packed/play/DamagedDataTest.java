package lampwright.exporters.packed.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The decoder's one refusal, whatever is damaged while the checksum is right. */
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class DamagedDataTest {
  static Stream<Arguments> cases() {
    return DamagedData.all().entrySet().stream().map(e -> Arguments.of(e.getKey(), e.getValue()));
  }

  @Test
  void dataThatBreaksNoRulePlays() {
    Unpacker unpacker = new Unpacker(DamagedData.whole());
    byte[] buffer = new byte[8];
    unpacker.select(0, buffer);
    unpacker.frame(buffer);
    assertThat(Arrays.copyOf(buffer, 3)).containsExactly(1, 2, 0);
  }

  /** 27 bytes: the header, a lamp, and a scene of one frame in which it is dark. */
  @Test
  void shortestDataPlays() {
    byte[] data = {
      'L', 'W', 0, 0, 0, 0, 2, 0, 1, 0, 1, 1, 27, 0, 16, 0, 0, 0, 0, 1, 0, 0, 0x20, 0x4E, 0, 0, 0
    };
    Unpacker unpacker = new Unpacker(DamagedData.sealed(data));
    byte[] buffer = {7};
    unpacker.select(0, buffer);
    unpacker.frame(buffer);
    assertThat(buffer).containsExactly(0);
    buffer[0] = 7;
    unpacker.select(0, 0, 0, buffer);
    assertThat(buffer).containsExactly(0);
    assertThat(unpacker.lamps()).isEqualTo(1);
    assertThat(unpacker.scenes()).isEqualTo(1);
    assertThat(unpacker.periodMicros(0)).isEqualTo(20_000);
    assertThat(unpacker.frames(0)).isEqualTo(1);
    assertThat(unpacker.loops(0)).isFalse();
    assertThat(unpacker.hasShow()).isFalse();
    byte[] loops = data.clone();
    loops[24] = (byte) 0x80;
    assertThat(new Unpacker(DamagedData.sealed(loops)).loops(0)).isTrue();
    assertThat(new Unpacker(loops).periodMicros(0)).isEqualTo(20_000);
    byte[] beyond = data.clone();
    beyond[16] = 1; // the lamp's base, in a frame of one byte
    assertThatThrownBy(() -> new Unpacker(DamagedData.sealed(beyond)))
        .isInstanceOf(PackedDataException.class);
    assertThatThrownBy(() -> new Unpacker(Arrays.copyOf(data, 26)))
        .isInstanceOfSatisfying(
            PackedDataException.class,
            e -> assertThat(e.damage()).isEqualTo(PackedDataException.Damage.NOT_PACKED));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void decoderRefuses(String name, byte[] data) {
    assertThatThrownBy(() -> play(data))
        .isInstanceOf(PackedDataException.class)
        .satisfies(
            e ->
                assertThat(((PackedDataException) e).damage())
                    .isEqualTo(PackedDataException.Damage.CONTENTS));
  }

  /** Lamps started in the midst of it: the one refusal or none, but an end. */
  @ParameterizedTest
  @MethodSource("cases")
  void seekEnds(String name, byte[] data) {
    Unpacker unpacker;
    try {
      unpacker = new Unpacker(data);
      unpacker.select(0, 0, unpacker.frames(0) - 1, new byte[unpacker.frameBytes()]);
    } catch (PackedDataException refused) {
      assertThat(refused.damage()).isEqualTo(PackedDataException.Damage.CONTENTS);
    }
  }

  private static void play(byte[] data) {
    Unpacker unpacker = new Unpacker(data);
    byte[] buffer = new byte[unpacker.frameBytes()];
    unpacker.select(0, buffer);
    for (int i = 0; i < 60; i++) {
      unpacker.frame(buffer);
    }
    for (int lamp = 0; lamp < unpacker.lamps(); lamp++) {
      unpacker.select(lamp, 0, unpacker.frames(0) - 1, buffer);
    }
  }
}
