package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import lampwright.exporters.packed.format.Coding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Entries of at most 4,096 frames (docs/packed.md), and bytes counted by hand. */
class ScoreTest {
  private static final Coding NARROW = new Coding(1, 2);
  private static final Coding WIDE = new Coding(2, 3);

  private static Section section(int bytes, int first, byte[]... waves) {
    byte[] all = new byte[bytes];
    all[0] = (byte) first;
    return new Section(
        all, Arrays.stream(waves).map(wave -> new Section.WaveRef(1, wave)).toList());
  }

  /** As many periods as 4,096 frames hold, so that each entry begins with one. */
  @ParameterizedTest
  @CsvSource({
    "10000, 100, 4000 4000 2000", "4000, 100, 4000", "4001, 100, 4000 1", "4096, 1, 4096",
    "4097, 1, 4096 1", "50, 100, 50", "9000, 4096, 4096 4096 808", "2049, 2048, 2049"
  })
  void longStretchesAreCutIntoWholePeriods(int frames, int period, String entries) {
    Score score = Score.of(frames, period, section(3, 1));
    assertThat(score.entries().stream().map(Score.Entry::frames).toList())
        .extracting(String::valueOf)
        .containsExactly(entries.split(" "));
  }

  /** An entry is two bytes and a place; sections and waves that are equal are there once. */
  @Test
  void equalSectionsAndWavesCountOnce() {
    byte[] wave = new byte[20];
    byte[] other = new byte[21];
    Score.Entry one = new Score.Entry(5, section(10, 1, wave));
    Score.Entry same = new Score.Entry(6, section(10, 1, wave.clone()));
    Score.Entry more = new Score.Entry(7, section(12, 2, wave, other));
    assertThat(new Score(List.of(one)).size(NARROW)).isEqualTo(4 + 10 + 20);
    assertThat(new Score(List.of(one, same)).size(NARROW)).isEqualTo(8 + 10 + 20);
    assertThat(new Score(List.of(one, same)).size(WIDE)).isEqualTo(10 + 10 + 20);
    assertThat(new Score(List.of(one, more)).size(NARROW)).isEqualTo(8 + 10 + 20 + 12 + 21);
    assertThat(new Score(List.of()).size(NARROW)).isZero();
  }

  @Test
  void shortestIsTheFirstOfTheShortest() {
    Score longer = Score.of(10, 10, section(9, 1));
    Score first = Score.of(10, 10, section(8, 2));
    Score second = Score.of(10, 10, section(8, 3));
    assertThat(Score.shortest(List.of(longer, first, second), NARROW)).containsSame(first);
    assertThat(Score.shortest(List.of(), NARROW)).isEmpty();
  }
}
