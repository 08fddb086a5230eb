package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Signals are made here from their own formulas, as bytes of 0 to 255 would carry them. */
class FlashTrainTest {
  /** Samples light over time in s, and rounds it to bytes. */
  private static double[] sample(double seconds, double fps, DoubleUnaryOperator light) {
    double[] samples = new double[(int) Math.round(seconds * fps)];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = Math.floor(255 * light.applyAsDouble(i / fps) + 0.5);
    }
    return samples;
  }

  private static DoubleUnaryOperator square(double hertz, double onShare) {
    return t -> t * hertz + 1e-9 - Math.floor(t * hertz + 1e-9) < onShare ? 1 : 0;
  }

  /** The light of one reflector that turns: a raised cosine of the angle, dark outside the beam. */
  private static DoubleUnaryOperator beacon(double hertz, double beamDegrees) {
    return t -> {
      double angle = Math.abs(Math.IEEEremainder(360 * t * hertz - 77, 360));
      double half = beamDegrees / 2;
      return angle < half ? (1 + Math.cos(Math.PI * angle / half)) / 2 : 0;
    };
  }

  /** First-order lag that takes so long to 90 %; runs twice, so that a loop has no seam. */
  private static double[] lag(double[] of, double fps, double riseMs, double fallMs) {
    double[] lagged = new double[of.length];
    double y = 0;
    for (int i = 0; i < 2 * of.length; i++) {
      double x = of[i % of.length];
      double tau = (x > y ? riseMs : fallMs) / 1000 / Math.log(10);
      y += (x - y) * (1 - Math.exp(-1 / fps / tau));
      lagged[i % of.length] = Math.floor(y + 0.5);
    }
    return lagged;
  }

  private static FlashTrain loop(double[] samples, double fps) {
    return FlashTrain.measure(samples, fps, true).orElseThrow();
  }

  // 4 s are 6 periods of 90 a minute; each is lit for a third of a second.
  @ParameterizedTest
  @ValueSource(doubles = {25, 30, 50, 100, 400})
  void indicatorIsMeasured(double fps) {
    FlashTrain train = loop(sample(4, fps, square(1.5, 0.5)), fps);

    assertThat(train.flashes()).isEqualTo(6);
    assertThat(train.groups()).isEqualTo(6);
    assertThat(train.flashesPerGroup()).isEqualTo(1);
    assertThat(train.regular()).isTrue();
    assertThat(train.groupsPerMinute().orElseThrow()).isCloseTo(90, within(1e-9));
    assertThat(train.flashesPerMinute().orElseThrow()).isCloseTo(90, within(1e-9));
    assertThat(train.onSeconds()).isCloseTo(1 / 3.0, within(1 / fps));
    assertThat(train.offSeconds()).isCloseTo(1 / 3.0, within(1 / fps));
    assertThat(train.gapSeconds()).isZero();
    assertThat(train.onShare()).isCloseTo(0.5, within(1.5 / fps));
  }

  // Exact by hand: 50 frames a second, 10 frames lit, 15 dark.
  @Test
  void squareTrainIsMeasuredToTheFrame() {
    FlashTrain train = loop(sample(5, 50, square(2, 0.4)), 50);

    assertThat(train.onSeconds()).isCloseTo(0.2, within(1e-9));
    assertThat(train.offSeconds()).isCloseTo(0.3, within(1e-9));
    assertThat(train.onShare()).isCloseTo(0.4, within(1e-9));
    assertThat(train.groupsPerMinute()).hasValue(120);
  }

  // By hand: a raised cosine is at half of its height half way to the edge of the beam, so that it
  // is lit for half of the beam: 60 of 360 degrees.
  @ParameterizedTest
  @CsvSource({"25, 150", "50, 150", "50, 60", "100, 240", "400, 120"})
  void beaconLobesAreMeasured(double fps, double perMinute) {
    FlashTrain train = loop(sample(4, fps, beacon(perMinute / 60, 120)), fps);

    assertThat(train.groupsPerMinute().orElseThrow())
        .isCloseTo(perMinute, within(perMinute * 0.01));
    assertThat(train.onSeconds()).isCloseTo(60.0 / perMinute / 6, within(1 / fps));
    assertThat(train.regular()).isTrue();
  }

  // 500 ms: 60 lit, 60 dark, 60 lit, 320 dark.
  @ParameterizedTest
  @ValueSource(doubles = {50, 100, 250, 400})
  void doubleFlashIsAGroupOfTwo(double fps) {
    FlashTrain train =
        loop(
            sample(
                3,
                fps,
                t -> {
                  double ms = (t * 1000 + 1e-6) % 500;
                  return ms < 60 || (ms >= 120 && ms < 180) ? 1 : 0;
                }),
            fps);

    assertThat(train.flashes()).isEqualTo(12);
    assertThat(train.groups()).isEqualTo(6);
    assertThat(train.flashesPerGroup()).isEqualTo(2);
    assertThat(train.regular()).isTrue();
    assertThat(train.groupsPerMinute().orElseThrow()).isCloseTo(120, within(1e-9));
    assertThat(train.flashesPerMinute().orElseThrow()).isCloseTo(240, within(1e-9));
    assertThat(train.onSeconds()).isCloseTo(0.060, within(1 / fps));
    assertThat(train.gapSeconds()).isCloseTo(0.060, within(1 / fps));
    assertThat(train.offSeconds()).isCloseTo(0.320, within(1 / fps));
  }

  // The second flash of each pair is half as strong as the first.
  @Test
  void weakerSecondFlashCounts() {
    FlashTrain train =
        loop(
            sample(
                4,
                100,
                t -> {
                  double ms = (t * 1000 + 1e-6) % 1000;
                  return ms < 60 ? 1 : ms >= 160 && ms < 220 ? 0.5 : 0;
                }),
            100);

    assertThat(train.flashes()).isEqualTo(8);
    assertThat(train.flashesPerGroup()).isEqualTo(2);
  }

  @ParameterizedTest
  @CsvSource({"25, 90, 60", "50, 90, 60", "100, 200, 120", "400, 90, 60"})
  void filamentLagIsSeenThrough(double fps, double riseMs, double fallMs) {
    double[] samples = lag(sample(4, fps, square(1.5, 0.5)), fps, riseMs, fallMs);

    FlashTrain train = loop(samples, fps);

    assertThat(train.groupsPerMinute().orElseThrow()).isCloseTo(90, within(0.9));
    // Half of the height is reached after log10(2) of the time to 90 %, and lost likewise.
    double shift = (fallMs - riseMs) / 1000 * Math.log10(2);
    assertThat(train.onSeconds()).isCloseTo(1 / 3.0 + shift, within(1 / fps));
    assertThat(train.flashesPerGroup()).isEqualTo(1);
  }

  // The filament doesn't cool between the flashes of a pair: the light falls to a third only.
  @Test
  void doubleFlashWithAfterglowIsAGroupOfTwo() {
    double[] samples =
        lag(
            sample(
                3,
                100,
                t -> {
                  double ms = (t * 1000 + 1e-6) % 1000;
                  return ms < 120 || (ms >= 220 && ms < 340) ? 1 : 0;
                }),
            100,
            60,
            200);

    FlashTrain train = loop(samples, 100);

    assertThat(train.flashesPerGroup()).isEqualTo(2);
    assertThat(train.groupsPerMinute().orElseThrow()).isCloseTo(60, within(0.6));
  }

  // 118 a minute don't fit a loop of 4 s: the seam cuts a period, which must not count.
  @ParameterizedTest
  @CsvSource({"4, 50, 118", "4, 50, 97", "12, 30, 73", "12, 25, 110"})
  void rateIsThatOfTheTrainWhereTheLoopCutsIt(double seconds, double fps, double perMinute) {
    FlashTrain train = loop(sample(seconds, fps, square(perMinute / 60, 0.4)), fps);

    assertThat(train.groupsPerMinute().orElseThrow())
        .isCloseTo(perMinute, within(perMinute * 0.01));
  }

  @Property(tries = 300, seed = "101")
  void rateOfAnyTrainIsRightToOnePercentOrAFrame(
      @ForAll @IntRange(min = 25, max = 400) int fps,
      @ForAll @IntRange(min = 4, max = 40) int flashes,
      @ForAll @Scale(4) @DoubleRange(min = 0.25, max = 0.75) double onShare,
      @ForAll boolean once) {
    double seconds = 10;
    double hertz = flashes / seconds;
    double[] samples = sample(seconds, fps, square(hertz, onShare));

    FlashTrain train = FlashTrain.measure(samples, fps, !once).orElseThrow();

    double period = 60 / train.groupsPerMinute().orElseThrow();
    assertThat(period).isCloseTo(1 / hertz, within(Math.max(0.01 / hertz, 1.0 / fps)));
    assertThat(train.flashes()).isEqualTo(flashes);
    assertThat(train.onShare()).isCloseTo(onShare, within(flashes * 1.01 / (seconds * fps)));
  }

  @Property(tries = 300, seed = "102")
  void rateOfAnyBeaconIsRightToOnePercent(
      @ForAll @IntRange(min = 50, max = 400) int fps,
      @ForAll @IntRange(min = 10, max = 40) int flashes,
      @ForAll @Scale(4) @DoubleRange(min = 60, max = 180) double beam) {
    FlashTrain train = loop(sample(10, fps, beacon(flashes / 10.0, beam)), fps);

    assertThat(train.groupsPerMinute().orElseThrow())
        .isCloseTo(6 * flashes, within(0.06 * flashes));
    assertThat(train.onSeconds()).isCloseTo(beam / 2 / 360 * 10 / flashes, within(1.0 / fps));
  }

  // Flash of 100 ms in a scene of 2 s that plays once: no rate.
  @Test
  void singleFlashPlayedOnceHasNoRate() {
    FlashTrain train =
        FlashTrain.measure(sample(2, 50, t -> t >= 1 && t < 1.1 ? 1 : 0), 50, false).orElseThrow();

    assertThat(train.flashes()).isEqualTo(1);
    assertThat(train.groupsPerMinute()).isEmpty();
    assertThat(train.flashesPerMinute()).isEmpty();
    assertThat(train.onSeconds()).isCloseTo(0.1, within(1e-9));
    assertThat(train.offSeconds()).isZero();
  }

  @Test
  void singleFlashOfALoopComesOnceALoop() {
    FlashTrain train = loop(sample(2, 50, t -> t < 0.1 ? 1 : 0), 50);

    assertThat(train.flashes()).isEqualTo(1);
    assertThat(train.groupsPerMinute()).hasValue(30);
    assertThat(train.onSeconds()).isCloseTo(0.1, within(1e-9));
    assertThat(train.offSeconds()).isCloseTo(1.9, within(1e-9));
  }

  // The flash lies across the seam: the last 50 ms and the first 50 ms.
  @Test
  void flashAcrossTheSeamIsOne() {
    FlashTrain train = loop(sample(2, 100, t -> t < 0.05 || t >= 1.95 - 1e-9 ? 1 : 0), 100);

    assertThat(train.flashes()).isEqualTo(1);
    assertThat(train.onSeconds()).isCloseTo(0.1, within(1e-9));
  }

  // By hand: lit 10, dark 10, three times in 50 frames, the last flash cut by the end.
  @Test
  void trainPlayedOnceMayStartAndEndLit() {
    FlashTrain train = FlashTrain.measure(sample(1, 50, square(2.5, 0.5)), 50, false).orElseThrow();

    assertThat(train.flashes()).isEqualTo(3);
    assertThat(train.groupsPerMinute().orElseThrow()).isCloseTo(150, within(1e-9));
    assertThat(train.onShare()).isCloseTo(0.6, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"true", "false"})
  void steadyLightDoesNotFlash(boolean loop) {
    assertThat(FlashTrain.measure(sample(2, 50, t -> 1), 50, loop)).isEmpty();
    assertThat(FlashTrain.measure(sample(2, 50, t -> 0), 50, loop)).isEmpty();
    assertThat(FlashTrain.measure(new double[] {7}, 50, loop)).isEmpty();
  }

  @Test
  void lightThatComesOnAndStaysDoesNotFlash() {
    assertThat(FlashTrain.measure(sample(2, 50, t -> t < 1 ? 0 : 1), 50, false)).isEmpty();
    assertThat(FlashTrain.measure(sample(2, 50, t -> Math.min(1, t)), 50, false)).isEmpty();
  }

  // The light of red, green and blue by turns, 405, 690 and 190 mcd, through a curve of 2.2.
  @ParameterizedTest
  @ValueSource(doubles = {3, 4, 8, 30})
  void slowColourCycleDoesNotFlash(double period) {
    double[] samples =
        sample(
            4 * period,
            50,
            t -> {
              double sixths = 6 * (t / period) % 6;
              return (405 * channel(sixths) + 690 * channel(sixths + 4) + 190 * channel(sixths + 2))
                  / 1285;
            });

    assertThat(FlashTrain.measure(samples, 50, true)).isEmpty();
  }

  private static double channel(double sixths) {
    double away = Math.abs(sixths % 6 - 3) - 1;
    return Math.pow(Math.min(1, Math.max(0, away)), 2.2);
  }

  @Test
  void slowSwellDoesNotFlash() {
    assertThat(
            FlashTrain.measure(
                sample(12, 50, t -> (1 - Math.cos(2 * Math.PI * t / 4)) / 2), 50, true))
        .isEmpty();
  }

  @Test
  void slowBeaconStillFlashes() {
    FlashTrain train = loop(sample(30, 50, beacon(1 / 6.0, 120)), 50);

    assertThat(train.groupsPerMinute().orElseThrow()).isCloseTo(10, within(0.1));
  }

  @Test
  void rippleDoesNotFlash() {
    assertThat(
            FlashTrain.measure(
                sample(2, 50, t -> 0.8 + 0.2 * square(3, 0.5).applyAsDouble(t)), 50, true))
        .isEmpty();
  }

  @Test
  void unevenFlashesAreNotRegular() {
    double[] samples = new double[200];
    for (int start : new int[] {0, 20, 55, 66, 120, 150}) {
      samples[start] = samples[start + 1] = samples[start + 2] = 1;
    }

    assertThat(loop(samples, 50).regular()).isFalse();
    assertThat(loop(samples, 50).flashes()).isEqualTo(6);
  }

  // By hand: 2 frames at full light, 3 at 0.2 and 5 at 0.05, of which the last counts as dark
  // (UN Regulation 65, annex 5, from memory: light above a tenth of the peak is on).
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void lampIsOnAboveATenthOfItsPeak(boolean loop) {
    double[] samples = new double[40];
    for (int i = 0; i < 40; i++) {
      samples[i] = i % 10 < 2 ? 100 : i % 10 < 5 ? 20 : 5;
    }

    FlashTrain train = FlashTrain.measure(samples, 10, loop).orElseThrow();

    assertThat(train.groupOnSeconds()).isCloseTo(0.5, within(1e-9));
    assertThat(train.groupOffSeconds()).isCloseTo(0.5, within(1e-9));
    assertThat(train.onSeconds()).isLessThan(0.3);
  }

  // The double flash of doubleFlashIsAGroupOfTwo: from its first light to its last are 180 ms.
  @Test
  void groupIsOnFromItsFirstFlashToItsLast() {
    FlashTrain train =
        loop(
            sample(
                3,
                100,
                t -> {
                  double ms = (t * 1000 + 1e-6) % 500;
                  return ms < 60 || (ms >= 120 && ms < 180) ? 1 : 0;
                }),
            100);

    assertThat(train.groupOnSeconds()).isCloseTo(0.18, within(1e-9));
    assertThat(train.groupOffSeconds()).isCloseTo(0.32, within(1e-9));
    assertThat(train.rateWords()).isEqualTo("120 groups/min, 2 flashes each = 240 flashes/min");
  }

  @Test
  void rateIsTold() {
    assertThat(loop(sample(4, 50, square(1.5, 0.5)), 50).rateWords()).isEqualTo("90 flashes/min");
    assertThat(
            FlashTrain.measure(sample(2, 50, t -> t >= 1 && t < 1.1 ? 1 : 0), 50, false)
                .orElseThrow()
                .rateWords())
        .isEqualTo("1 flash");
    double[] uneven = new double[200];
    for (int start : new int[] {0, 20, 55, 66, 120, 150}) {
      uneven[start] = uneven[start + 1] = uneven[start + 2] = 1;
    }
    assertThat(loop(uneven, 50).rateWords()).endsWith(" flashes/min, uneven");
  }

  // Red, green and blue by turns: one colour that fades into another stays above half.
  @Test
  void crossfadeThatNeverGoesDarkDoesNotFlash() {
    assertThat(
            FlashTrain.measure(sample(3, 50, t -> 0.5 + Math.abs(t % 0.4 - 0.2) / 0.4), 50, true))
        .isEmpty();
  }

  @Test
  void noFrameIsRefused() {
    assertThatThrownBy(() -> FlashTrain.measure(new double[0], 50, true))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("light: no frame: must have at least one");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, Double.NaN, Double.POSITIVE_INFINITY})
  void lightOutOfRangeIsRefused(double light) {
    assertThatThrownBy(() -> FlashTrain.measure(new double[] {0, light}, 50, true))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("light of a frame: ");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, Double.NaN, 1001})
  void frameRateOutOfRangeIsRefused(double fps) {
    assertThatThrownBy(() -> FlashTrain.measure(new double[] {0, 1}, fps, true))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("frames per second: ");
  }

  /** A group of 50 ms flashes, 100 ms from one to the next, at each full second. */
  private static double[] groups(int... sizes) {
    return sample(
        sizes.length,
        100,
        t -> {
          int second = (int) Math.floor(t + 1e-9);
          double ms = (t - second) * 1000 + 1e-6;
          return ms < 100 * sizes[second] && ms % 100 < 50 ? 1 : 0;
        });
  }

  /** 7 flashes in 4 groups, 60 groups a minute; a loop's seam may have cut the odd one. */
  @Test
  void oneGroupOfAnotherSizeMakesASignalThatPlaysOnceUneven() {
    FlashTrain once = FlashTrain.measure(groups(2, 1, 2, 2), 100, false).orElseThrow();
    assertThat(once.flashes()).isEqualTo(7);
    assertThat(once.groups()).isEqualTo(4);
    assertThat(once.flashesPerGroup()).isEqualTo(2);
    assertThat(once.regular()).isFalse();
    assertThat(once.groupsPerMinute().orElseThrow()).isCloseTo(60, within(1e-9));
    assertThat(once.flashesPerMinute().orElseThrow()).isCloseTo(105, within(1e-9));
    assertThat(once.rateWords()).isEqualTo("105 flashes/min, uneven");

    FlashTrain again = loop(groups(2, 1, 2, 2), 100);
    assertThat(again.regular()).isTrue();
    assertThat(again.flashesPerMinute().orElseThrow()).isCloseTo(120, within(1e-9));
    assertThat(loop(groups(2, 1, 2, 1), 100).regular()).isFalse();
  }

  /** The size that most groups have; of two that as many have, the larger. */
  @ParameterizedTest
  @CsvSource({"2 2 3 3 3, 3", "3 3 3 2 2, 3", "2 3 2 3, 3", "2 2 2 3, 2"})
  void usualSizeIsThatOfMostGroups(String sizes, int usual) {
    int[] all = java.util.Arrays.stream(sizes.split(" ", -1)).mapToInt(Integer::parseInt).toArray();
    assertThat(FlashTrain.measure(groups(all), 100, false).orElseThrow().flashesPerGroup())
        .isEqualTo(usual);
  }

  /**
   * Flashes at 0, 1, 2, 3, 4.35 and 5.35 s: one period of five is odd, and left out of the rate.
   */
  @Test
  void oneOddPeriodIsNotInTheRateButMakesItUneven() {
    FlashTrain train =
        FlashTrain.measure(
                sample(
                    6,
                    100,
                    t ->
                        (t < 4 ? t + 1e-9 : t - 0.35 + 1e-9) % 1 < 0.1 && (t < 3.9 || t > 4.3)
                            ? 1
                            : 0),
                100,
                false)
            .orElseThrow();
    assertThat(train.flashes()).isEqualTo(6);
    assertThat(train.groupsPerMinute().orElseThrow()).isCloseTo(60, within(1e-9));
    assertThat(train.regular()).isFalse();
  }

  /** 50 frames/s, played once: lit for the first 10 frames and the last 10 of 50. */
  @Test
  void signalThatBeginsAndEndsLitHasTwoFlashesOfTheirFrames() {
    FlashTrain train =
        FlashTrain.measure(sample(1, 50, t -> t < 0.199 || t > 0.799 ? 1 : 0), 50, false)
            .orElseThrow();
    assertThat(train.flashes()).isEqualTo(2);
    assertThat(train.onSeconds()).isCloseTo(0.2, within(1e-9));
    assertThat(train.offSeconds()).isCloseTo(0.6, within(1e-9));
    assertThat(train.onShare()).isCloseTo(0.4, within(1e-9));
  }
}
