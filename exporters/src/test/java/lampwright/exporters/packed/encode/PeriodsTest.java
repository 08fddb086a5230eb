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

/** Periods against trying all, and by hand. */
class PeriodsTest {
  /** Frames that are all different, with a stretch of a period in their middle. */
  private static long[] stretch(int before, int period, int frames, int after) {
    return IntStream.range(0, before + frames + after)
        .mapToLong(i -> i >= before && i < before + frames ? (i - before) % period : 1000 + i)
        .toArray();
  }

  private static boolean repeats(long[] h, int period) {
    return IntStream.range(period, h.length).allMatch(i -> h[i] == h[i - period]);
  }

  /** Few values, so that periods are frequent. */
  @Property
  void periodIsTheSmallestOfAll(
      @ForAll @Size(min = 1, max = 14) List<@IntRange(max = 1) Integer> values) {
    long[] h = values.stream().mapToLong(Integer::longValue).toArray();
    int any = IntStream.rangeClosed(1, h.length).filter(p -> repeats(h, p)).min().orElseThrow();
    int whole =
        IntStream.rangeClosed(1, h.length)
            .filter(p -> h.length % p == 0 && repeats(h, p))
            .min()
            .orElseThrow();
    assertThat(Periods.smallest(h)).isEqualTo(any);
    assertThat(Periods.dividing(h)).isEqualTo(whole);
  }

  // By hand: 0 1 2 0 1 repeats every 3 frames, but 5 frames are no whole number of them.
  @Test
  void periodNeedNotDivide() {
    long[] h = {0, 1, 2, 0, 1};
    assertThat(Periods.smallest(h)).isEqualTo(3);
    assertThat(Periods.dividing(h)).isEqualTo(5);
    assertThat(Periods.dividing(new long[] {4, 5, 4, 5})).isEqualTo(2);
    assertThat(Periods.dividing(new long[] {4})).isEqualTo(1);
    assertThat(Periods.smallest(new long[] {4})).isEqualTo(1);
  }

  /** What comes again has to save 24 frames: nine times three frames save 24, 26 save 23. */
  @ParameterizedTest
  @CsvSource({"27, true", "26, false", "28, true", "60, true"})
  void stretchIsFoundWhereItSavesEnough(int frames, boolean found) {
    long[] h = stretch(10, 3, frames, 7);
    List<Periods.Repeat> repeats = Periods.repeats(h, 100);
    if (found) {
      assertThat(repeats).containsExactly(new Periods.Repeat(10, 10 + frames, 3));
    } else {
      assertThat(repeats).isEmpty();
    }
  }

  /** It has to come twice whole. */
  @ParameterizedTest
  @CsvSource({"80, true", "79, false"})
  void longPeriodComesTwiceWhole(int frames, boolean found) {
    List<Periods.Repeat> repeats = Periods.repeats(stretch(0, 40, frames, 0), 100);
    assertThat(repeats.contains(new Periods.Repeat(0, frames, 40))).isEqualTo(found);
    assertThat(Periods.repeats(stretch(0, 40, 80, 5), 40)).isNotEmpty();
    assertThat(Periods.repeats(stretch(0, 40, 80, 5), 39)).isEmpty();
  }

  @Test
  void stretchesOneAfterAnotherAreFoundApart() {
    long[] h = new long[100];
    for (int i = 0; i < h.length; i++) {
      h[i] = i < 50 ? i % 5 : 10 + i % 4;
    }
    assertThat(Periods.repeats(h, 100))
        .containsExactly(new Periods.Repeat(0, 50, 5), new Periods.Repeat(50, 100, 4));
  }

  @Test
  void stillFramesAreNoRepetition() {
    assertThat(Periods.repeats(new long[100], 50)).isEmpty();
    long[] h = stretch(50, 4, 40, 0);
    Arrays.fill(h, 0, 50, 9);
    assertThat(Periods.repeats(h, 50)).containsExactly(new Periods.Repeat(50, 90, 4));
  }

  /** Whatever is found is so, and goes on as far as it can. */
  @Property
  void foundRepetitionsAreTrue(
      @ForAll @Size(min = 1, max = 150) List<@IntRange(max = 1) Integer> values,
      @ForAll @IntRange(min = 2, max = 20) int longest) {
    long[] h = values.stream().mapToLong(Integer::longValue).toArray();
    int at = 0;
    for (Periods.Repeat repeat : Periods.repeats(h, longest)) {
      assertThat(repeat.from()).isGreaterThanOrEqualTo(at);
      at = repeat.to();
      int period = repeat.period();
      assertThat(period).isBetween(2, longest);
      assertThat(repeat.to() - repeat.from()).isGreaterThanOrEqualTo(2 * period);
      for (int i = repeat.from() + period; i < repeat.to(); i++) {
        assertThat(h[i]).isEqualTo(h[i - period]);
      }
      if (at < h.length) {
        assertThat(h[at]).isNotEqualTo(h[at - period]);
      }
    }
  }
}
