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

/** Samples of a closed curve, of which some are known, by hand. */
class KnownSamplesTest {
  private static final int[] CURVE = {-1, 5, -1, -1, 8, 8, -1, 2};

  @Test
  void placesAreThoseThatAreKnown() {
    KnownSamples known = KnownSamples.of(CURVE);
    assertThat(known.places()).containsExactly(1, 4, 5, 7);
    assertThat(KnownSamples.of(CURVE, new int[] {7, 4, 1, 4, 5, 7}).places())
        .containsExactly(1, 4, 5, 7);
    // From 2 to 5, to 8, to 8, to 2, all round.
    assertThat(known.variation()).isEqualTo(3 + 3 + 0 + 6);
  }

  @Test
  void samplesArePutOnACurveAndWipedOff() {
    KnownSamples known = KnownSamples.of(CURVE);
    int[] other = new int[8];
    known.putOn(other);
    assertThat(other).containsExactly(0, 5, 0, 0, 8, 8, 0, 2);
    known.wipeOff(other);
    assertThat(other).containsExactly(0, -1, 0, 0, -1, -1, 0, -1);
  }

  /** An unknown sample is like the one before it, all round. */
  @Test
  void samplesAStepApartAreFilled() {
    int[] curve = new int[12];
    Arrays.fill(curve, -1);
    curve[3] = 40;
    curve[9] = 20;
    assertThat(KnownSamples.of(curve).filled(3)).containsExactly(20, 40, 40, 20);
    assertThat(KnownSamples.of(curve).filled(1))
        .containsExactly(20, 20, 20, 40, 40, 40, 40, 40, 40, 20, 20, 20);
  }

  /** Sorting is worth it below a sixteenth of the curve. */
  @Test
  void fewAreLessThanASixteenth() {
    assertThat(KnownSamples.areFew(9, 160)).isTrue();
    assertThat(KnownSamples.areFew(10, 160)).isFalse();
    assertThat(KnownSamples.areFew(10, 176)).isTrue();
  }

  /**
   * Of 100 samples with flat parts of 30 and 20, at most these and the mirror image are left out:
   * 50 / 2 - 2. Flat parts may go on round the end.
   */
  @Test
  void leastBytesLeaveOutTwoFlatParts() {
    int[] curve = IntStream.range(0, 100).map(i -> 1000 + i).toArray();
    Arrays.fill(curve, 10, 40, 1);
    Arrays.fill(curve, 60, 80, 2);
    Arrays.fill(curve, 50, 55, 3);
    assertThat(KnownSamples.of(curve).leastBytes()).isEqualTo(23);
    int[] turned = IntStream.range(0, 100).map(i -> curve[(i + 25) % 100]).toArray();
    assertThat(KnownSamples.of(turned).leastBytes()).isEqualTo(23);
    // The same curve with the flat parts told of by their ends alone.
    for (int i : new int[] {12, 25, 39, 61, 79}) {
      curve[i] = -1;
    }
    assertThat(KnownSamples.of(curve).leastBytes()).isEqualTo(23);
    assertThat(KnownSamples.of(new int[] {7, 7, 7}).leastBytes()).isEqualTo(1);
    assertThat(KnownSamples.of(new int[] {-1, 7, -1}).leastBytes()).isEqualTo(1);
  }

  @Property
  void noWaveIsShorter(
      @ForAll @Size(min = 1, max = 60) List<@IntRange(min = -1, max = 3) Integer> samples,
      @ForAll @IntRange(max = 3) int one) {
    int[] curve = samples.stream().mapToInt(Integer::intValue).toArray();
    curve[curve.length / 2] = one;
    KnownSamples known = KnownSamples.of(curve);
    int[] filled = curve.clone();
    for (int i = 0; i < 2 * filled.length; i++) {
      int k = i % filled.length;
      if (filled[k] < 0) {
        filled[k] = filled[(k + filled.length - 1) % filled.length];
      }
    }
    assertThat(known.filled(1)).isEqualTo(filled);
    assertThat(known.leastBytes()).isLessThanOrEqualTo(Wave.of(filled).bytes().length);
  }
}
