package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Turns a frame as shares in lowest terms, by hand. */
class SpeedsTest {
  /**
   * At 50 frames a second: 60 a minute turn once in 50 frames, 150 once in 20, 90 three times in
   * 100; 990 ms are 49.5 frames; 5 and 480 a minute and 12 s are the ends of what is tried.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 50, true",
    "1, 20, true",
    "3, 100, true",
    "2, 99, true",
    "1, 600, true",
    "4, 25, true",
    "1, 5, true",
    "1, 750, false",
    "481, 3000, false",
    "2, 1201, false",
    "2, 9, false"
  })
  void speedsAtFiftyFramesASecond(int pace, int size, boolean there) {
    assertThat(Speeds.of(20_000).contains(new FineGrid.Speed(pace, size))).isEqualTo(there);
  }

  /** What turns half round or more in a frame is not seen to turn that way. */
  @Test
  void speedsAreBelowHalfATurnAFrame() {
    List<FineGrid.Speed> speeds = Speeds.of(1_000_000);
    assertThat(speeds)
        .contains(new FineGrid.Speed(29, 60))
        .doesNotContain(new FineGrid.Speed(1, 2));
    assertThat(speeds).allSatisfy(s -> assertThat(2 * s.pace()).isLessThan(s.size()));
    assertThat(Speeds.of(20_000)).doesNotHaveDuplicates();
  }

  /** The phases of a wave are at most 32,767 (docs/packed.md). */
  @Test
  void sizesAreThoseThatAWaveMayHave() {
    assertThat(Speeds.of(1000)).allSatisfy(s -> assertThat(s.size()).isLessThanOrEqualTo(32_767));
    // 1,000 frames a second: 7 a minute are 7 in 60,000 frames, 8 are 1 in 7,500.
    assertThat(Speeds.of(1000))
        .contains(new FineGrid.Speed(1, 7500))
        .doesNotContain(new FineGrid.Speed(7, 60_000));
  }

  /** 60 a second in whole microseconds still is one; 29.97 is none, nor is one in two seconds. */
  @Test
  void ratesAreWholeNumbersASecond() {
    assertThat(Speeds.of(16_667)).contains(new FineGrid.Speed(1, 60));
    assertThat(Speeds.of(33_367)).isEmpty();
    assertThat(Speeds.of(2_000_000)).isEmpty();
    assertThat(Speeds.of(3_000_000)).isEmpty();
  }
}
