package lampwright.engine.scene;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The blends against values worked out by hand from the design's formulas. */
class BlendTest {
  /** Under, over, how far it is faded in, and the drive that results. */
  @ParameterizedTest
  @CsvSource({
    // under (1 - a) + over a: 0.4 x 0.75 + 0.8 x 0.25.
    "COVER, 0.4, 0.8, 0.25, 0.5",
    "COVER, 0.4, 0.8, 1, 0.8",
    "COVER, 0.4, 0, 1, 0",
    // min(1, under + over a): 0.4 + 0.2, and past full drive.
    "ADD, 0.4, 0.8, 0.25, 0.6",
    "ADD, 0.4, 0.8, 1, 1",
    "ADD, 0.4, 0, 1, 0.4",
    // max(under, over a).
    "BRIGHTER, 0.4, 0.8, 0.25, 0.4",
    "BRIGHTER, 0.4, 0.8, 0.75, 0.6",
    "BRIGHTER, 0, 0.8, 1, 0.8",
    // under (1 - a + a over): 0.4 x (0.75 + 0.2).
    "SCALE, 0.4, 0.8, 0.25, 0.38",
    "SCALE, 0.4, 0, 1, 0",
    "SCALE, 0, 1, 1, 0"
  })
  void driveIsThatOfTheFormula(Blend blend, double under, double over, double a, double drive) {
    assertThat(blend.blend(under, over, a)).isEqualTo(drive, within(1e-15));
  }

  @Property
  void lightThatIsFadedOutChangesNothing(
      @ForAll Blend blend,
      @ForAll @DoubleRange(min = 0, max = 1) double under,
      @ForAll @DoubleRange(min = 0, max = 1) double over) {
    assertThat(blend.blend(under, over, 0)).isEqualTo(under);
  }

  @Property
  void drivesStayDrives(
      @ForAll Blend blend,
      @ForAll @DoubleRange(min = 0, max = 1) double under,
      @ForAll @DoubleRange(min = 0, max = 1) double over,
      @ForAll @DoubleRange(min = 0, max = 1) double a) {
    assertThat(blend.blend(under, over, a)).isBetween(0.0, 1.0);
  }

  /** A whole row against the formula for one drive, at any offset and with rows that are hidden. */
  @Property
  void rowIsBlendedDriveByDrive(
      @ForAll Blend blend,
      @ForAll @IntRange(max = 7) int from,
      @ForAll @IntRange(max = 7) int to,
      @ForAll @IntRange(max = 40) int count,
      @ForAll Random random) {
    double a = random.nextInt(3) == 0 ? 1 : random.nextDouble();
    double[] over = random.doubles(60).toArray();
    double[] under = random.doubles(60).toArray();
    double[] want = under.clone();
    for (int i = 0; i < count; i++) {
      want[to + i] = blend.blend(under[to + i], over[from + i], a);
    }
    blend.lay(over, from, a, under, to, count);
    assertThat(under).containsExactly(want);
  }
}
