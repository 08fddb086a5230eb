package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** W3C WCAG 2.2, success criterion 2.3.1 and its definition of general and red flashes. */
class FlashCautionTest {
  private static final double[] BLACK = {0, 0, 0};
  private static final double[] WHITE = {1, 1, 1};
  private static final double[] RED = {1, 0, 0};

  private static double[] grey(double level) {
    return new double[] {level, level, level};
  }

  /** One state after the other, each for so many frames, over and over to a length. */
  private static double[] alternate(int frames, int each, double[]... states) {
    double[] rgb = new double[3 * frames];
    for (int i = 0; i < frames; i++) {
      System.arraycopy(states[i / each % states.length], 0, rgb, 3 * i, 3);
    }
    return rgb;
  }

  /** Plays once, and shows white at the end, so that 1 is the greatest luminance. */
  private static FlashCaution beforeWhite(double[] rgb, double fps) {
    double[] longer = Arrays.copyOf(rgb, rgb.length + 3 * 200);
    for (int i = rgb.length; i < longer.length; i++) {
      longer[i] = i < longer.length - 3 ? rgb[rgb.length - 1] : 1;
    }
    return once(longer, fps);
  }

  private static FlashCaution loop(double[] rgb, double fps) {
    return FlashCaution.measure(xyz(rgb), fps, true);
  }

  private static FlashCaution once(double[] rgb, double fps) {
    return FlashCaution.measure(xyz(rgb), fps, false);
  }

  // The inverse of IEC 61966-2-1's four-digit matrix from XYZ, so that a red is as red as it says.
  private static double[] xyz(double[] rgb) {
    double[] xyz = new double[rgb.length];
    for (int i = 0; i < rgb.length; i += 3) {
      xyz[i] =
          0.412395588967414 * rgb[i]
              + 0.357583430763715 * rgb[i + 1]
              + 0.180492647381702 * rgb[i + 2];
      xyz[i + 1] =
          0.212586230785596 * rgb[i]
              + 0.715170303703411 * rgb[i + 1]
              + 0.072200498643336 * rgb[i + 2];
      xyz[i + 2] =
          0.019297215491747 * rgb[i]
              + 0.119183864580849 * rgb[i + 1]
              + 0.950497125131580 * rgb[i + 2];
    }
    return xyz;
  }

  // At 60 frames a second: on 10 and off 10 are 3 flashes a second, on 7 and off 8 are 4.
  @Test
  void threeFlashesASecondPass() {
    FlashCaution caution = loop(alternate(240, 10, WHITE, BLACK), 60);

    assertThat(caution.general().flashes()).isEqualTo(3);
    assertThat(caution.passes()).isTrue();
  }

  @Test
  void fourFlashesASecondFail() {
    FlashCaution caution = loop(alternate(224, 7, WHITE, BLACK), 56);

    assertThat(caution.general().flashes()).isEqualTo(4);
    assertThat(caution.general().passes()).isFalse();
    assertThat(caution.passes()).isFalse();
    assertThat(caution.red().flashes()).isZero();
  }

  // White is 1, so that a change from 0.500 to 0.600 is 10 % of the greatest luminance.
  @ParameterizedTest
  @CsvSource({"0.500, 0.600, 5", "0.500, 0.599, 0", "0, 0.1, 5", "0, 0.0999, 0"})
  void changesOfTenPercentCount(double dark, double bright, int flashes) {
    FlashCaution caution = beforeWhite(alternate(105, 5, grey(dark), grey(bright)), 50);

    assertThat(caution.general().flashes()).isEqualTo(flashes);
  }

  // The darker image must be below 0.80.
  @ParameterizedTest
  @CsvSource({"0.79, 1, 5", "0.80, 1, 0", "0.85, 1, 0", "0.799, 0.9, 5"})
  void changesCountWhereTheDarkerIsBelowEightyPercent(double dark, double bright, int flashes) {
    FlashCaution caution = beforeWhite(alternate(105, 5, grey(bright), grey(dark)), 50);

    assertThat(caution.general().flashes()).isEqualTo(flashes);
  }

  // 5 % up and 5 % up again are one change of 10 %: what counts is from turn to turn.
  @Test
  void stepsInOneDirectionAreOneChange() {
    double[] rgb = alternate(100, 5, BLACK, grey(0.05), grey(0.10), grey(0.05));

    // Period 20 frames of 50 a second: 2.5 a second, at most 3 pairs, and 2 in half-open seconds
    // that hold 5 changes.
    assertThat(beforeWhite(rgb, 50).general().flashes()).isEqualTo(2);
  }

  @Test
  void rippleBelowTenPercentDoesNotSplitAChange() {
    double[] rgb = alternate(96, 2, BLACK, grey(0.5), grey(0.45), grey(0.9), grey(0.85), grey(0.4));

    // Up from 0 to 0.9 and down again in 12 frames: 4 flashes in 48 frames.
    assertThat(loop(rgb, 48).general().flashes()).isEqualTo(4);
  }

  // Four flashes, the first of them at 2.0 s.
  @Test
  void worstSecondIsFound() {
    double[] rgb = new double[3 * 250];
    for (int start : new int[] {0, 100, 110, 120, 130}) {
      Arrays.fill(rgb, 3 * start, 3 * (start + 5), 1);
    }

    FlashCaution caution = once(rgb, 50);

    assertThat(caution.general().flashes()).isEqualTo(4);
    assertThat(caution.general().startSeconds()).isCloseTo(2.0, within(1e-12));
  }

  // By hand: 8 changes 7 frames apart span 49 frames, inside one second of 50 frames; 8 frames
  // apart they span 56, and 7 of them fit.
  @ParameterizedTest
  @CsvSource({"7, 4", "8, 3"})
  void changesMustLieInsideOneSecond(int each, int flashes) {
    FlashCaution caution = once(alternate(9 * each, each, BLACK, WHITE), 50);

    assertThat(caution.general().flashes()).isEqualTo(flashes);
  }

  // Two flashes at each end: four within the second round the seam, two where it doesn't loop.
  @Test
  void loopIsWatchedRoundItsSeam() {
    double[] rgb = new double[3 * 200];
    for (int start : new int[] {5, 15, 175, 185}) {
      Arrays.fill(rgb, 3 * start, 3 * (start + 5), 1);
    }

    assertThat(loop(rgb, 50).general().flashes()).isEqualTo(4);
    assertThat(loop(rgb, 50).general().startSeconds()).isCloseTo(3.5, within(1e-12));
    assertThat(once(rgb, 50).general().flashes()).isEqualTo(2);
  }

  // A loop of a quarter of a second with one flash is four flashes a second.
  @Test
  void shortLoopIsGoneRoundManyTimes() {
    assertThat(loop(alternate(10, 5, WHITE, BLACK), 40).general().flashes()).isEqualTo(4);
    assertThat(loop(alternate(2, 1, WHITE, BLACK), 50).general().flashes()).isEqualTo(25);
  }

  // R/(R + G + B) of 0.8 is reached by (1, 0.125, 0.125), and not by (1, 0.126, 0.126). Both are
  // far from blue in u'v'.
  @ParameterizedTest
  @CsvSource({"0.125, 5", "0.126, 0"})
  void redIsSaturatedFromEightyPercent(double others, int flashes) {
    double[] rgb = alternate(100, 5, new double[] {1, others, others}, new double[] {0, 0, 1});

    assertThat(loop(rgb, 50).red().flashes()).isEqualTo(flashes);
  }

  // By hand with IEC 61966-2-1 and CIE 15: red lies at u' 0.4507, v' 0.5229. (1, g, 0) has
  // u' = 4 X / (X + 15 Y + 3 Z); at g = 0.4998 it lies 0.2 away.
  @ParameterizedTest
  @CsvSource({"0.49, 0", "0.51, 5"})
  void redChangesByMoreThanAFifthOfTheDiagram(double green, int flashes) {
    double[] orange = {1, green, 0};
    double away = distanceFromRed(orange);
    assertThat(away > 0.2).as("distance " + away).isEqualTo(flashes > 0);

    assertThat(loop(alternate(100, 5, RED, orange), 50).red().flashes()).isEqualTo(flashes);
  }

  private static double distanceFromRed(double[] c) {
    double x = 0.4124 * c[0] + 0.3576 * c[1] + 0.1805 * c[2];
    double y = 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
    double z = 0.0193 * c[0] + 0.1192 * c[1] + 0.9505 * c[2];
    double scale = x + 15 * y + 3 * z;
    return Math.hypot(4 * x / scale - 0.4507, 9 * y / scale - 0.5229);
  }

  @Test
  void redOnAndOffIsARedFlash() {
    FlashCaution caution = loop(alternate(80, 5, RED, BLACK), 40);

    assertThat(caution.red().flashes()).isEqualTo(4);
    assertThat(caution.red().passes()).isFalse();
    // Red against black is a general flash as well.
    assertThat(caution.general().flashes()).isEqualTo(4);
  }

  // Issue 10: light at 10 Hz that luminance on a screen's scale missed.
  @Test
  void nothingPassesForBeingDimOrBlue() {
    assertThat(loop(alternate(100, 5, new double[] {0, 0, 1}, BLACK), 100).general().flashes())
        .isEqualTo(10);
    assertThat(loop(alternate(100, 5, new double[] {0.01, 0, 0}, BLACK), 100))
        .isEqualTo(loop(alternate(100, 5, RED, BLACK), 100));
  }

  // An LED of 465 nm, far outside sRGB (spectral locus by FACTS.md: x 0.1355 y 0.0399).
  @Test
  void nothingIsClippedToWhatAScreenShows() {
    double[] xyz = new double[3 * 100];
    for (int i = 0; i < 100; i++) {
      if (i % 10 < 5) {
        xyz[3 * i] = 0.1355 / 0.0399;
        xyz[3 * i + 1] = 1;
        xyz[3 * i + 2] = (1 - 0.1355 - 0.0399) / 0.0399;
      }
    }
    FlashCaution caution = FlashCaution.measure(xyz, 100, true);
    assertThat(caution.general().flashes()).isEqualTo(10);
    assertThat(caution.red().flashes()).isZero();
  }

  // Issue 10: red between 100 % and 25 % at 10 Hz.
  @Test
  void redThatDimsWithoutGoingOutFlashesInLuminanceAlone() {
    FlashCaution caution = loop(alternate(100, 5, RED, new double[] {0.25, 0, 0}), 100);

    assertThat(caution.general().flashes()).isEqualTo(10);
    assertThat(caution.red().flashes()).isZero();
  }

  // A state below a tenth of the greatest luminance counts as black, of which no red is near.
  @ParameterizedTest
  @CsvSource({"0.099, 10", "0.1, 0"})
  void redBelowATenthCountsAsBlack(double dim, int flashes) {
    FlashCaution caution = loop(alternate(100, 5, RED, new double[] {dim, 0, 0}), 100);

    assertThat(caution.red().flashes()).isEqualTo(flashes);
  }

  // A fall from 1 that passes 0.9 at once and 0.80 later is a change only then: the next one
  // follows 45 frames after that, and 50 after 0.9.
  @Test
  void changeStandsAtTheFrameThatCompletesIt() {
    double[] rgb = alternate(100, 50, WHITE, BLACK);
    Arrays.fill(rgb, 3 * 20, 3 * 25, 0.85);
    Arrays.fill(rgb, 3 * 25, 3 * 70, 0.5);
    Arrays.fill(rgb, 3 * 70, 3 * 100, 1);

    assertThat(once(rgb, 50).general()).isEqualTo(new FlashCaution.Worst(1, 0.5));
  }

  // At 29.97 a second a second is 30 frames: changes 29 frames apart share one, 30 apart do not.
  @ParameterizedTest
  @CsvSource({"29.97, 29, 1", "29.97, 30, 0", "30, 29, 1", "30, 30, 0", "30.03, 30, 1"})
  void secondIsTheFrameRateRoundedUp(double fps, int apart, int flashes) {
    double[] rgb = new double[3 * 200];
    Arrays.fill(rgb, 3 * 50, 3 * (50 + apart), 1);

    assertThat(once(rgb, fps).general().flashes()).isEqualTo(flashes);
  }

  // Lit at the start and at the end: a scene that plays once rises from nothing before it.
  @Test
  void sceneThatPlaysOnceHasNothingBeforeAndAfter() {
    double[] rgb = alternate(50, 5, WHITE, BLACK);

    // Nine changes by hand, at 5, 10, ... 45.
    assertThat(once(rgb, 50).general().flashes()).isEqualTo(4);
    assertThat(loop(rgb, 50).general().flashes()).isEqualTo(5);
  }

  @Test
  void threeRedFlashesASecondPass() {
    assertThat(loop(alternate(240, 10, RED, BLACK), 60).red().flashes()).isEqualTo(3);
    assertThat(loop(alternate(240, 10, RED, BLACK), 60).passes()).isTrue();
  }

  @Test
  void redAndBlueByTurnsIsARedFlash() {
    FlashCaution caution = loop(alternate(80, 5, RED, new double[] {0, 0, 1}), 40);

    assertThat(caution.red().flashes()).isEqualTo(4);
  }

  @Test
  void blueAndGreenByTurnsIsNoRedFlash() {
    assertThat(loop(alternate(80, 5, new double[] {0, 1, 0}, new double[] {0, 0, 1}), 40).red())
        .isEqualTo(new FlashCaution.Worst(0, 0));
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void steadyLightIsQuiet(boolean loop) {
    FlashCaution caution = FlashCaution.measure(xyz(alternate(100, 100, RED)), 50, loop);

    assertThat(caution)
        .isEqualTo(new FlashCaution(new FlashCaution.Worst(0, 0), new FlashCaution.Worst(0, 0)));
  }

  /** A loop flashes as often whichever of its frames is the first. */
  @Property(tries = 200, seed = "111")
  void seamOfALoopMakesNoDifference(
      @ForAll @IntRange(min = 0, max = 119) int shift,
      @ForAll @IntRange(min = 1, max = 12) int on,
      @ForAll @IntRange(min = 1, max = 12) int off) {
    double[] rgb = new double[3 * 120];
    for (int i = 0; i < 120; i++) {
      if (i % (on + off) < on) {
        rgb[3 * i] = 1;
      }
    }
    double[] turned = new double[rgb.length];
    System.arraycopy(rgb, 3 * shift, turned, 0, rgb.length - 3 * shift);
    System.arraycopy(rgb, 0, turned, rgb.length - 3 * shift, 3 * shift);

    assertThat(loop(turned, 50).general().flashes()).isEqualTo(loop(rgb, 50).general().flashes());
    assertThat(loop(turned, 50).red().flashes()).isEqualTo(loop(rgb, 50).red().flashes());
  }

  /** As above, where changes are small and the seam lies on a slope. */
  @Property(tries = 500, seed = "112")
  void seamOnASlopeMakesNoDifference(
      @ForAll @Size(40) List<@IntRange(min = 0, max = 8) Integer> twentieths,
      @ForAll @IntRange(min = 0, max = 39) int shift) {
    double[] rgb = new double[3 * 40];
    double[] turned = new double[3 * 40];
    for (int i = 0; i < 40; i++) {
      Arrays.fill(rgb, 3 * i, 3 * i + 3, twentieths.get(i) / 20.0);
      Arrays.fill(turned, 3 * i, 3 * i + 3, twentieths.get((i + shift) % 40) / 20.0);
    }

    assertThat(loop(turned, 25).general().flashes()).isEqualTo(loop(rgb, 25).general().flashes());
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 4})
  void framesMustBeWhole(int length) {
    assertThatThrownBy(() -> FlashCaution.measure(new double[length], 50, true))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "xyz: " + length + " numbers: must have three for each frame, and at least one frame");
  }

  @Test
  void lightThatIsNoNumberIsRefused() {
    assertThatThrownBy(() -> FlashCaution.measure(new double[] {0, 0, Double.NaN}, 50, true))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("X, Y or Z: NaN");
  }

  @Test
  void frameRateOfZeroIsRefused() {
    assertThatThrownBy(() -> loop(new double[3], 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("frames per second: 0");
  }

  @Test
  void theWorseOfTwoIsFoundForEachKind() {
    FlashCaution slow = caution(2, 5);
    FlashCaution quick = caution(4, 1);
    assertThat(slow.orWorse(quick)).isEqualTo(caution(4, 5)).isEqualTo(quick.orWorse(slow));
    assertThat(slow.orWorse(slow)).isEqualTo(slow);
    assertThat(slow.most()).isEqualTo(5);
    assertThat(quick.most()).isEqualTo(4);
    assertThat(quick.passes()).isFalse();
    assertThat(caution(3, 3).passes()).isTrue();
    assertThat(caution(3, 4).passes()).isFalse();
  }

  private static FlashCaution caution(int general, int red) {
    return new FlashCaution(
        new FlashCaution.Worst(general, 0.5), new FlashCaution.Worst(red, 0.25));
  }
}
