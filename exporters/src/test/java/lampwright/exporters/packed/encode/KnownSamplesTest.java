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

  private static KnownSamples known(int... curve) {
    CurveSketch sketch = new CurveSketch(curve.length);
    for (int place = 0; place < curve.length; place++) {
      if (curve[place] >= 0) {
        assertThat(sketch.put(place, curve[place])).isTrue();
      }
    }
    return sketch.samples();
  }

  /** A curve whose unknown samples, -1, are each like the one before, all round. */
  static int[] filled(int... curve) {
    int[] filled = curve.clone();
    for (int i = 0; i < 2 * filled.length; i++) {
      int k = i % filled.length;
      if (filled[k] < 0) {
        filled[k] = filled[(k + filled.length - 1) % filled.length];
      }
    }
    return filled;
  }

  @Test
  void variationIsTheSumOfStepsAllRound() {
    // From 2 to 5, to 8, to 8, to 2.
    assertThat(known(CURVE).variation()).isEqualTo(3 + 3 + 0 + 6);
  }

  @Test
  void samplesArePutOnAnotherCurve() {
    CurveSketch other = new CurveSketch(8);
    known(CURVE).putOn(other);
    assertThat(other.put(0, 9)).isTrue();
    // To 9, to 5, to 8, to 8, to 2.
    assertThat(other.samples().variation()).isEqualTo(7 + 4 + 3 + 0 + 6);
  }

  /** An unknown sample is like the one before it, all round. */
  @Test
  void samplesAStepApartAreFilled() {
    int[] curve = new int[12];
    Arrays.fill(curve, -1);
    curve[3] = 40;
    curve[9] = 20;
    assertThat(known(curve).filled(3)).containsExactly(20, 40, 40, 20);
    assertThat(known(curve).filled(1))
        .containsExactly(20, 20, 20, 40, 40, 40, 40, 40, 40, 20, 20, 20);
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
    assertThat(known(curve).leastBytes()).isEqualTo(23);
    int[] turned = IntStream.range(0, 100).map(i -> curve[(i + 25) % 100]).toArray();
    assertThat(known(turned).leastBytes()).isEqualTo(23);
    // The same curve with the flat parts told of by their ends alone.
    for (int i : new int[] {12, 25, 39, 61, 79}) {
      curve[i] = -1;
    }
    assertThat(known(curve).leastBytes()).isEqualTo(23);
    assertThat(known(7, 7, 7).leastBytes()).isEqualTo(1);
    assertThat(known(-1, 7, -1).leastBytes()).isEqualTo(1);
  }

  @Property
  void noWaveIsShorter(
      @ForAll @Size(min = 1, max = 60) List<@IntRange(min = -1, max = 3) Integer> samples,
      @ForAll @IntRange(max = 3) int one) {
    int[] curve = samples.stream().mapToInt(Integer::intValue).toArray();
    curve[curve.length / 2] = one;
    KnownSamples known = known(curve);
    int[] filled = filled(curve);
    assertThat(known.filled(1)).isEqualTo(filled);
    assertThat(known.leastBytes()).isLessThanOrEqualTo(Wave.of(filled).bytes().length);
  }
}
