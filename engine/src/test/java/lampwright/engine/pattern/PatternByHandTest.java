package lampwright.engine.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.light.Mixer;
import lampwright.engine.light.Mixers;
import lampwright.engine.time.Ratio;
import org.junit.jupiter.api.Test;

/** Patterns on rows of pixels that are not all of one type. */
class PatternByHandTest {
  private static final Curve LINEAR = new Curve.Linear();
  private static final Mixer OUTPUT = Mixers.forOutput(LINEAR);
  private static final Mixer DIRECT = bench(ColourMatching.DIRECT);
  private static final Mixer MATCHED = bench(ColourMatching.EMITTERS);

  private static FittedEmitter fitted(double x, double y, double millicandela) {
    return new FittedEmitter(new Emitter(new Chromaticity(x, y), millicandela), 20);
  }

  private static Mixer bench(ColourMatching matching) {
    return Mixers.forPixel(
        LINEAR,
        matching,
        false,
        Map.of(
            EmitterKind.RED, fitted(0.700, 0.299, 405),
            EmitterKind.GREEN, fitted(0.170, 0.700, 690),
            EmitterKind.BLUE, fitted(0.136, 0.050, 190),
            EmitterKind.WHITE, fitted(0.3451, 0.3516, 2000)));
  }

  /** Drives of each pixel at an instant of a cue of a second. */
  private static double[][] paint(Pattern pattern, List<Mixer> mixers, String tMs) {
    double[] drives = new double[mixers.size() * Mixer.SLOTS];
    Arrays.fill(drives, 9);
    pattern
        .painter(new PaintContext(mixers, LINEAR, Ratio.of(1000)))
        .paint(Ratio.of(new BigDecimal(tMs)), drives);
    double[][] pixels = new double[mixers.size()][];
    for (int k = 0; k < pixels.length; k++) {
      pixels[k] = Arrays.copyOfRange(drives, k * Mixer.SLOTS, (k + 1) * Mixer.SLOTS);
    }
    return pixels;
  }

  private static double[] mixed(Mixer mixer, Colour colour, double light) {
    double[] drives = new double[Mixer.SLOTS];
    mixer.mix(colour).write(light, drives, 0);
    return drives;
  }

  @Test
  void fadeReachesEveryPixelOfTheRow() {
    Fade fade =
        new Fade(
            Look.DEFAULT,
            Optional.of(new Colour.Srgb(255, 0, 0)),
            Optional.of(new Colour.Srgb(0, 0, 51)),
            0.5,
            1,
            Easing.LINEAR);
    double[][] pixels = paint(fade, List.of(OUTPUT, DIRECT, DIRECT, OUTPUT, DIRECT), "500");
    // Half way the level is 0.75 and an output's drive between 1 and 51 / 255 = 0.2, so 0.6.
    assertThat(pixels[0]).containsExactly(new double[] {0.45, 0, 0, 0}, within(1e-15));
    assertThat(pixels[3]).containsExactly(new double[] {0.45, 0, 0, 0}, within(1e-15));
    for (int k : new int[] {1, 2, 4}) {
      assertThat(pixels[k]).containsExactly(new double[] {0.375, 0, 0.075, 0}, within(1e-15));
    }
  }

  /** A matched colour is mixed at the light of the instant, for it does not go with the light. */
  @Test
  void fadeBetweenDrivesAndAWhiteMixesEachAtItsLight() {
    Colour drive = new Colour.Drive(1, 0, 0, 0);
    Colour white = new Colour.Kelvin(4000);
    double[] half = mixed(MATCHED, white, 0.5);
    double[] full = mixed(MATCHED, white, 1);
    assertThat(half[3]).isNotCloseTo(full[3] / 2, within(0.04));
    double[] expected = {0.25 + half[0] / 2, half[1] / 2, half[2] / 2, half[3] / 2};
    for (boolean first : new boolean[] {true, false}) {
      Fade fade =
          new Fade(
              Look.DEFAULT,
              Optional.of(first ? drive : white),
              Optional.of(first ? white : drive),
              0.5,
              0.5,
              Easing.LINEAR);
      assertThat(paint(fade, List.of(MATCHED), "500")[0]).containsExactly(expected, within(1e-12));
    }
  }

  /** Evenly in mired: 2,000 K is 500 and 5,000 K is 200, half way are 350, which is 2,857 K. */
  @Test
  void tintReachesEveryPixelOfTheRow() {
    Tint tint = new Tint(new Look(Colour.WHITE, 0.5), 2000, OptionalDouble.of(5000));
    double[][] pixels = paint(tint, List.of(MATCHED, MATCHED, OUTPUT, MATCHED, OUTPUT), "500");
    double most = Math.min(MATCHED.kelvinLuminance(2000), MATCHED.kelvinLuminance(5000));
    double[] expected = new double[Mixer.SLOTS];
    MATCHED.mixKelvin(1e6 / 350, most, 0.5, expected, 0);
    for (int k : new int[] {0, 1, 3}) {
      assertThat(pixels[k]).containsExactly(expected, within(1e-12));
    }
    assertThat(pixels[2]).containsExactly(0.5, 0, 0, 0);
    assertThat(pixels[4]).containsExactly(0.5, 0, 0, 0);
  }

  /**
   * The noise is SplitMix64's, of which the Java platform has its own: the n-th number from a seed
   * is the finaliser of the seed and n golden gammas.
   */
  @Test
  void flickerIsTheNoiseOfSplitMix64() {
    long gamma = 0x9E3779B97F4A7C15L;
    for (long seed : new long[] {0, 1, 20_261_129, (1L << 53) - 1}) {
      Flicker flicker = new Flicker(Look.DEFAULT, seed, 0.5, BigDecimal.valueOf(8));
      for (int turn = 0; turn < 5; turn++) {
        double[][] at = paint(flicker, List.of(OUTPUT, OUTPUT, OUTPUT), turn * 125 + "");
        double[][] between =
            paint(flicker, List.of(OUTPUT, OUTPUT, OUTPUT), turn * 125 + 62.5 + "");
        for (int pixel = 0; pixel < 3; pixel++) {
          long own = new SplittableRandom(seed + gamma * pixel).nextLong();
          double left = new SplittableRandom(own + gamma * turn).nextDouble();
          double right = new SplittableRandom(own + gamma * (turn + 1)).nextDouble();
          assertThat(at[pixel][0]).isCloseTo(1 - left / 2, within(1e-15));
          // Smooth noise is half way at half a turn.
          assertThat(between[pixel][0]).isCloseTo(1 - (left + right) / 4, within(1e-15));
        }
      }
    }
  }

  /** Hues of a cycle stand a quarter of the circle apart: red, yellow-green, cyan, violet. */
  @Test
  void cycleSpreadsItsHuesOverTheRow() {
    List<Mixer> row = List.of(DIRECT, DIRECT, DIRECT, DIRECT);
    ColourCycle cycle =
        new ColourCycle(Look.DEFAULT, BigDecimal.ZERO, BigDecimal.valueOf(1000), 1, 1, false);
    double[][] hues = {{1, 0, 0, 0}, {0.5, 1, 0, 0}, {0, 1, 1, 0}, {0.5, 0, 1, 0}};
    for (int quarter = 0; quarter < 4; quarter++) {
      double[][] pixels = paint(cycle, row, quarter * 250 + "");
      for (int k = 0; k < 4; k++) {
        assertThat(pixels[k]).containsExactly(hues[(k + quarter) % 4], within(1e-12));
      }
    }
    ColourCycle together =
        new ColourCycle(Look.DEFAULT, BigDecimal.ZERO, BigDecimal.valueOf(1000), 0, 1, true);
    double[][] pixels = paint(together, List.of(DIRECT, DIRECT, OUTPUT, DIRECT), "250");
    assertThat(pixels[0]).containsExactly(hues[3], within(1e-12));
    assertThat(pixels[1]).containsExactly(hues[3], within(1e-12));
    assertThat(pixels[2]).containsExactly(1, 0, 0, 0);
    assertThat(pixels[3]).containsExactly(hues[3], within(1e-12));
  }

  @Test
  void testWalkLightsOneEmitterAndNoOther() {
    TestWalk walk = new TestWalk(Look.DEFAULT, BigDecimal.ZERO, BigDecimal.valueOf(100));
    for (int step = 0; step < 6; step++) {
      double[] row = new double[2 * Mixer.SLOTS];
      // The output has one step, the pixel four; then all begins again.
      row[step % 5 == 0 ? 0 : 3 + step] = 1;
      double[][] pixels = paint(walk, List.of(OUTPUT, DIRECT), step * 100 + "");
      assertThat(pixels[0]).containsExactly(Arrays.copyOfRange(row, 0, 4));
      assertThat(pixels[1]).containsExactly(Arrays.copyOfRange(row, 4, 8));
    }
  }

  /** Intervals are half open: lit from their start on, dark at their very end. */
  @Test
  void lightEndsAtTheInstantThatItsTimeIsOver() {
    BigDecimal zero = BigDecimal.ZERO;
    Painting indicator =
        new Painting(
            new Indicator(Look.DEFAULT, zero, BigDecimal.valueOf(60), new BigDecimal("0.5")),
            1,
            2000);
    assertThat(indicator.at("499.999")).containsExactly(1.0);
    assertThat(indicator.at("500")).containsExactly(0.0);
    assertThat(indicator.at("1000")).containsExactly(1.0);
    // Two flashes of 40 ms, each with 15 ms of dark; then a gap begins at 110.
    Painting flash =
        new Painting(
            new Flash(
                Look.DEFAULT,
                zero,
                BigDecimal.valueOf(40),
                BigDecimal.valueOf(15),
                2,
                BigDecimal.valueOf(100)),
            1,
            1000);
    assertThat(flash.at("110")).containsExactly(0.0);
    assertThat(flash.at("210")).containsExactly(1.0);
  }

  /** CSS Easing 1: x of both points is 0 to 1; y here is at most 10 either way. */
  @Test
  void easingsAreReadUpToTheirLimits() {
    assertThat(Easing.parse("cubic-bezier(0, -10, 1, 10)")).isPresent();
    assertThat(Easing.parse("cubic-bezier(1, 10, 0, -10)")).isPresent();
    for (String wrong :
        List.of(
            "cubic-bezier(-0.01, 0, 1, 1)",
            "cubic-bezier(1.01, 0, 1, 1)",
            "cubic-bezier(0, 0, -0.01, 1)",
            "cubic-bezier(0, 0, 1.01, 1)",
            "cubic-bezier(0, 10.01, 1, 1)",
            "cubic-bezier(0, 0, 1, -10.01)")) {
      assertThat(Easing.parse(wrong)).as(wrong).isEmpty();
    }
    for (String word : List.of("linear", "hold", "smooth")) {
      assertThat(Easing.parse(word).orElseThrow().text()).isEqualTo(word);
    }
  }
}
