package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Waves are read back as docs/packed.md says, kind by kind. */
class WaveTest {
  @Test
  void flatCurveIsOneSample() {
    assertThat(Wave.of(new int[] {7, 7, 7, 7}).bytes()).hasSize(5 + 1);
  }

  @Test
  void hillOnFlatGroundIsHalfTheHill() {
    // 1 2 3 of 0 0 0 1 2 3 2 1 0 0: mirrored about the 3, with the 0 before them.
    Wave wave = Wave.of(new int[] {0, 0, 0, 1, 2, 3, 2, 1, 0, 0});
    assertThat(wave.bytes()).hasSize(5 + 4);
  }

  /**
   * Wherever the curve begins, it is cut behind its longest flat part, of which a sample stays: of
   * 1 2 3 9 and six 0 five samples, of three 1, 2 7 and five 0 four.
   */
  @ParameterizedTest
  @CsvSource({"1 2 3 9 0 0 0 0 0 0, 5", "1 1 1 2 7 0 0 0 0 0, 4", "4 4 1 2 0 0 0 1 5 2, 8"})
  void flatPartsAreCutWhereverTheCurveBegins(String samples, int bytes) {
    int[] v = Arrays.stream(samples.split(" ")).mapToInt(Integer::parseInt).toArray();
    for (int turn = 0; turn < v.length; turn++) {
      int by = turn;
      int[] turned = IntStream.range(0, v.length).map(i -> v[(i + by) % v.length]).toArray();
      assertThat(Wave.of(turned).bytes()).as("turned by %d", turn).hasSize(5 + bytes);
    }
  }

  @Test
  void longFlatCurveTakesNoTimeThatGrowsWithItsSquare() {
    // Every sample is a centre; each was once copied all round to be looked at.
    assertThat(Wave.of(new int[32_767]).bytes()).hasSize(5 + 1);
  }

  /** Few values, so that mirrors and flat parts are frequent. */
  @Property
  void waveGivesEverySampleBack(
      @ForAll @Size(min = 1, max = 16) List<@IntRange(max = 2) Integer> samples) {
    int[] v = samples.stream().mapToInt(Integer::intValue).toArray();
    Wave wave = Wave.of(v);
    byte[] bytes = wave.bytes();
    for (int i = 0; i < v.length; i++) {
      assertThat(value(bytes, (i + wave.turn) % v.length, v.length)).isEqualTo(v[i]);
    }
  }

  /** The wave's value at q, by the text of the format. */
  private static int value(byte[] wave, int q, int size) {
    int first = (wave[1] & 255) | ((wave[2] & 255) << 8);
    int last = (wave[3] & 255) | ((wave[4] & 255) << 8);
    int i =
        switch (wave[0]) {
          case 0 -> q;
          case 1 -> Math.min(q, size - q);
          default -> Math.min(q, size - 1 - q);
        };
    return wave[5 + Math.min(last, Math.max(0, i - first))] & 255;
  }
}
