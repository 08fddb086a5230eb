package lampwright.engine.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rules of the patterns, instant by instant; every interval half open. */
class PatternTest {
  private static final BigDecimal NONE = BigDecimal.ZERO;
  private static final Look WHITE = Look.DEFAULT;

  static BigDecimal dec(String number) {
    return new BigDecimal(number);
  }

  private static FittedEmitter fitted(double x, double y, double millicandela) {
    return new FittedEmitter(new Emitter(new Chromaticity(x, y), millicandela), 20);
  }

  static Mixer rgb(Curve curve) {
    FittedEmitter red = fitted(0.700, 0.299, 405);
    FittedEmitter green = fitted(0.170, 0.700, 690);
    FittedEmitter blue = fitted(0.136, 0.050, 190);
    return Mixers.forPixel(
        curve,
        ColourMatching.DIRECT,
        false,
        Map.of(EmitterKind.RED, red, EmitterKind.GREEN, green, EmitterKind.BLUE, blue));
  }

  @Test
  void steadyShinesAtItsLevelThroughTheCurve() {
    Painting half =
        new Painting(
            new Steady(new Look(Colour.WHITE, 0.5)),
            List.of(Mixers.forOutput(new Curve.Power(2))),
            new Curve.Power(2),
            1000);
    assertThat(half.at("0")).containsExactly(0.25);
    assertThat(half.at("999")).containsExactly(0.25);
  }

  @Test
  void breatheRisesAndFallsAlongACosineThroughTheCurve() {
    // By hand: level 0.2 + 0.8 x (1 - cos) / 2 is 0.2, 0.6, 1 and 0.6 at the quarters; squared.
    Painting breath =
        new Painting(
            new Breathe(Look.DEFAULT, NONE, dec("1000"), 0.2),
            List.of(Mixers.forOutput(new Curve.Power(2))),
            new Curve.Power(2),
            4000);
    assertThat(breath.at("0").get(0)).isCloseTo(0.04, within(1e-12));
    assertThat(breath.at("250").get(0)).isCloseTo(0.36, within(1e-12));
    assertThat(breath.at("500").get(0)).isCloseTo(1.0, within(1e-12));
    assertThat(breath.at("1750").get(0)).isCloseTo(0.36, within(1e-12));
    assertThat(breath.at("2000").get(0)).isCloseTo(0.04, within(1e-12));
  }

  @Test
  void flashIsOnFirstAndOffAtTheEndOfItsOnPart() {
    Painting flash =
        new Painting(new Flash(WHITE, NONE, dec("40"), dec("15"), 2, dec("100")), 1, 1000);
    Map<String, Double> expected =
        Map.of(
            "0", 1.0, "39", 1.0, "40", 0.0, "54", 0.0, "55", 1.0, "94", 1.0, "95", 0.0, "209", 0.0,
            "210", 1.0);
    expected.forEach((t, light) -> assertThat(flash.at(t)).as(t).containsExactly(light));
  }

  @Test
  void flashEdgeFallsOnTheDecimalAsWritten() {
    Painting flash = new Painting(new Flash(WHITE, NONE, dec("0.1"), dec("0.2"), 1, NONE), 1, 1000);
    // 0.1 + 0.2 is not 0.3 in binary floating point; a million periods on it must still be exact.
    assertThat(flash.at("300000")).containsExactly(1.0);
    assertThat(flash.at("300000.1")).containsExactly(0.0);
    assertThat(flash.at("300000.0999")).containsExactly(1.0);
  }

  @Test
  void phaseStartsWithinThePeriod() {
    Painting flash =
        new Painting(new Flash(WHITE, dec("0.5"), dec("100"), dec("100"), 1, NONE), 1, 1000);
    assertThat(flash.strip(50, 8)).isEqualTo("..##..##");
  }

  /** UN Regulation 6: 90 flashes a minute, so a period of 666.67 ms. */
  @Test
  void indicatorIsLitForItsShareOfThePeriod() {
    Painting indicator = new Painting(new Indicator(WHITE, NONE, dec("90"), dec("0.5")), 1, 2000);
    assertThat(indicator.at("333.333")).containsExactly(1.0);
    assertThat(indicator.at("333.334")).containsExactly(0.0);
    assertThat(indicator.at("666.666")).containsExactly(0.0);
    assertThat(indicator.at("666.667")).containsExactly(1.0);
  }

  @Test
  void beaconIsACosineLobeThatTurns() {
    RotatingBeacon beacon = new RotatingBeacon(WHITE, NONE, dec("60"), 120, true, List.of());
    Painting turn = new Painting(beacon, 4, 4000);
    assertThat(turn.at("0")).containsExactly(1.0, 0.0, 0.0, 0.0);
    // Half way between two pixels 90 degrees apart, each is 45 of 60 degrees from the beam.
    double part = (1 + Math.cos(Math.toRadians(135))) / 2;
    List<Double> between = turn.at("125");
    assertThat(between.get(0)).isCloseTo(part, within(1e-15));
    assertThat(between.get(1)).isCloseTo(part, within(1e-15));
    assertThat(between.subList(2, 4)).containsExactly(0.0, 0.0);
    assertThat(turn.at("250")).containsExactly(0.0, 1.0, 0.0, 0.0);
    assertThat(turn.at("1000")).containsExactly(1.0, 0.0, 0.0, 0.0);
  }

  @Test
  void beaconAnticlockwiseMeetsThePixelsInReverse() {
    Painting turn =
        new Painting(new RotatingBeacon(WHITE, NONE, dec("60"), 120, false, List.of()), 4, 4000);
    assertThat(turn.at("250")).containsExactly(0.0, 0.0, 0.0, 1.0);
  }

  @Test
  void beaconHalfwayDownItsLobeIsExactlyHalf() {
    Painting turn =
        new Painting(
            new RotatingBeacon(WHITE, NONE, dec("60"), 120, true, List.of(30.0, 330.0)), 2, 4000);
    assertThat(turn.at("0")).containsExactly(0.5, 0.5);
  }

  @Test
  void chaseDrawsItsBodyAndTailBehindTheHead() {
    Painting chase = new Painting(new Chase(WHITE, NONE, dec("100"), 2, 3, false), 8, 4000);
    assertThat(chase.at("500")).containsExactly(0.0, 0.25, 0.5, 0.75, 1.0, 1.0, 0.0, 0.0);
    // Round the end.
    assertThat(chase.at("0")).containsExactly(1.0, 0.0, 0.0, 0.0, 0.25, 0.5, 0.75, 1.0);
    assertThat(chase.at("799.9").get(7)).isEqualTo(1.0);
    assertThat(chase.at("800")).isEqualTo(chase.at("0"));
  }

  @Test
  void chaseTailIsDimmedThroughTheCurve() {
    Painting chase =
        new Painting(
            new Chase(new Look(Colour.WHITE, 0.8), NONE, dec("100"), 1, 1, false),
            Collections.nCopies(3, Mixers.forOutput(new Curve.Power(2))),
            new Curve.Power(2),
            1000);
    List<Double> light = chase.at("100");
    assertThat(light.get(1)).isCloseTo(0.64, within(1e-15));
    assertThat(light.get(0)).isCloseTo(0.16, within(1e-15));
  }

  @Test
  void bouncingChaseTurnsAtTheEndsWithoutRoundingThem() {
    Painting chase = new Painting(new Chase(WHITE, NONE, dec("100"), 1, 1, true), 4, 4000);
    assertThat(chase.at("0")).containsExactly(1.0, 0.0, 0.0, 0.0);
    assertThat(chase.at("300")).containsExactly(0.0, 0.0, 0.5, 1.0);
    assertThat(chase.at("400")).containsExactly(0.0, 0.0, 1.0, 0.5);
    assertThat(chase.at("500")).containsExactly(0.0, 1.0, 0.5, 0.0);
    assertThat(chase.at("600")).isEqualTo(chase.at("0"));
  }

  @Test
  void chaseOfOnePixelIsSteady() {
    assertThat(
            new Painting(new Chase(WHITE, dec("0.3"), dec("100"), 3, 2, true), 1, 1000)
                .strip(50, 8))
        .isEqualTo("########");
    assertThat(new Painting(new Chase(WHITE, NONE, dec("100"), 3, 2, false), 1, 1000).strip(50, 8))
        .isEqualTo("########");
  }

  /** UN Regulation 6, 5.6 (from memory): a sequential indicator is all lit within 200 ms. */
  @Test
  void fillLightsPixelAfterPixel() {
    Painting fill =
        new Painting(new Fill(WHITE, NONE, dec("200"), dec("200"), dec("400")), 4, 4000);
    assertThat(fill.at("0")).containsExactly(1.0, 0.0, 0.0, 0.0);
    assertThat(fill.at("49")).containsExactly(1.0, 0.0, 0.0, 0.0);
    assertThat(fill.at("50")).containsExactly(1.0, 1.0, 0.0, 0.0);
    assertThat(fill.at("150")).containsExactly(1.0, 1.0, 1.0, 1.0);
    assertThat(fill.at("399")).containsExactly(1.0, 1.0, 1.0, 1.0);
    assertThat(fill.at("400")).containsExactly(0.0, 0.0, 0.0, 0.0);
    assertThat(fill.at("800")).containsExactly(1.0, 0.0, 0.0, 0.0);
  }

  @Test
  void fillInNoTimeLightsAllAtOnce() {
    Painting fill = new Painting(new Fill(WHITE, NONE, NONE, dec("200"), dec("400")), 3, 4000);
    assertThat(fill.at("0")).containsExactly(1.0, 1.0, 1.0);
  }

  @Test
  void colourCycleRunsRoundTheHexcone() {
    Painting cycle =
        new Painting(
            new ColourCycle(WHITE, NONE, dec("6000"), 0, 1, false),
            List.of(rgb(Painting.LINEAR)),
            Painting.LINEAR,
            6000);
    assertThat(cycle.emittersAt("0")).containsExactly(1.0, 0.0, 0.0, 0.0);
    assertThat(cycle.emittersAt("1000")).containsExactly(1.0, 1.0, 0.0, 0.0);
    assertThat(cycle.emittersAt("3000")).containsExactly(0.0, 1.0, 1.0, 0.0);
    assertThat(cycle.emittersAt("4500")).containsExactly(0.5, 0.0, 1.0, 0.0);
  }

  @Test
  void colourCycleSpreadsOverThePixelsAndRunsBackwards() {
    Painting cycle =
        new Painting(
            new ColourCycle(WHITE, NONE, dec("4000"), 1, 1, true),
            List.of(rgb(Painting.LINEAR), rgb(Painting.LINEAR)),
            Painting.LINEAR,
            6000);
    // Red: hue 0 at pixel 0 and half a turn on at pixel 1; then a quarter back.
    assertThat(cycle.at("0")).containsExactly(1.0, 0.0);
    assertThat(cycle.at("2000")).containsExactly(0.0, 1.0);
    assertThat(cycle.emittersAt("1000")).containsExactly(0.5, 0.0, 1.0, 0.0);
  }

  @Test
  void fadeMovesLightAndLevelOverTheCue() {
    Fade fade = new Fade(WHITE, Optional.empty(), Optional.empty(), 0, 1, Easing.LINEAR);
    Painting up =
        new Painting(fade, List.of(Mixers.forOutput(new Curve.Power(2))), new Curve.Power(2), 1000);
    assertThat(up.at("0")).containsExactly(0.0);
    assertThat(up.at("500")).containsExactly(0.25);
    assertThat(up.at("1000")).containsExactly(1.0);
  }

  @Test
  void fadeMixesTheColoursInLinearDrive() {
    Fade fade =
        new Fade(
            WHITE,
            Optional.of(new Colour.Srgb(255, 0, 0)),
            Optional.of(new Colour.Srgb(0, 0, 255)),
            1,
            1,
            Easing.LINEAR);
    Curve curve = new Curve.Power(2.2);
    assertThat(new Painting(fade, List.of(rgb(curve)), curve, 1000).emittersAt("250"))
        .containsExactly(0.75, 0.0, 0.25, 0.0);
  }

  @Test
  void overshootingEasingStaysWithinFullDrive() {
    Fade fade =
        new Fade(
            WHITE,
            Optional.empty(),
            Optional.empty(),
            0,
            1,
            new Easing.CubicBezier(0.1, 3, 0.2, 3));
    Painting up = new Painting(fade, 1, 1000);
    assertThat(up.at("500")).containsExactly(1.0);
  }

  private static Keyframe key(String atMs, double level, Easing easing) {
    return new Keyframe(dec(atMs), Optional.empty(), OptionalDouble.of(level), easing);
  }

  @Test
  void keyframesRepeatAtTheTimeOfTheLast() {
    Keyframes frames =
        new Keyframes(
            WHITE,
            NONE,
            List.of(
                key("0", 0, Easing.LINEAR),
                key("100", 1, new Easing.Hold()),
                key("200", 0.5, Easing.LINEAR)),
            true);
    Painting painting = new Painting(frames, 1, 1000);
    assertThat(painting.at("50")).containsExactly(0.5);
    assertThat(painting.at("100")).containsExactly(1.0);
    assertThat(painting.at("199.9")).containsExactly(1.0);
    assertThat(painting.at("200")).containsExactly(0.0);
    assertThat(painting.at("250")).containsExactly(0.5);
  }

  @Test
  void keyframesHoldTheLastWhenTheyDoNotRepeat() {
    Keyframes frames =
        new Keyframes(
            WHITE,
            NONE,
            List.of(key("50", 0.25, Easing.LINEAR), key("100", 1, Easing.LINEAR)),
            false);
    Painting painting = new Painting(frames, 1, 1000);
    assertThat(painting.at("0")).containsExactly(0.25);
    assertThat(painting.at("75")).containsExactly(0.625);
    assertThat(painting.at("900")).containsExactly(1.0);
  }

  @Test
  void oneKeyframeHoldsForEver() {
    Keyframes frames = new Keyframes(WHITE, NONE, List.of(key("0", 0.5, Easing.LINEAR)), true);
    assertThat(new Painting(frames, 1, 1000).at("700")).containsExactly(0.5);
  }

  @Test
  void twoKeyframesAtOneTimeAreAJump() {
    Keyframes frames =
        new Keyframes(
            WHITE,
            NONE,
            List.of(
                key("0", 0, Easing.LINEAR),
                key("100", 1, Easing.LINEAR),
                key("100", 0, Easing.LINEAR),
                key("200", 0, Easing.LINEAR)),
            true);
    Painting painting = new Painting(frames, 1, 1000);
    assertThat(painting.at("99")).containsExactly(0.99);
    assertThat(painting.at("100")).containsExactly(0.0);
  }

  @Test
  void flickerStaysWithinItsDepthAndRepeatsForItsSeed() {
    Flicker flicker = new Flicker(WHITE, 7, 0.4, dec("8"));
    Painting one = new Painting(flicker, 2, 100_000);
    Painting other = new Painting(flicker, 2, 100_000);
    Painting reseeded = new Painting(new Flicker(WHITE, 8, 0.4, dec("8")), 2, 100_000);
    boolean differs = false;
    for (int t = 0; t < 100_000; t += 37) {
      List<Double> light = one.at(String.valueOf(t));
      assertThat(light).isEqualTo(other.at(String.valueOf(t)));
      assertThat(light).allSatisfy(v -> assertThat(v).isBetween(0.6, 1.0));
      differs |= !light.equals(reseeded.at(String.valueOf(t)));
    }
    assertThat(differs).isTrue();
  }

  @Test
  void flickerMovesWithoutJumps() {
    Painting flicker = new Painting(new Flicker(WHITE, 7, 1, dec("8")), 1, 100_000);
    for (int t = 0; t < 2000; t++) {
      double now = flicker.at(String.valueOf(t)).get(0);
      double next = flicker.at(String.valueOf(t + 1)).get(0);
      // 1.5 is the steepest slope of 3v^2 - 2v^3, and the noise turns every 125 ms.
      assertThat(Math.abs(next - now)).isLessThanOrEqualTo(1.5 / 125 + 1e-9);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0", "499, 0", "500, 1", "1000, 2", "1500, 4", "2500, 6", "2999, 6", "3000, 8", "3500, 0"
  })
  void testWalkLightsEveryEmitterAlone(String tMs, int slot) {
    // Two RGB pixels and a driver output: seven steps; the blank fourth places are passed over.
    List<Mixer> row =
        List.of(rgb(Painting.LINEAR), rgb(Painting.LINEAR), Mixers.forOutput(Painting.LINEAR));
    double[] drives = new double[12];
    new TestWalk(WHITE, NONE, dec("500"))
        .painter(new PaintContext(row, Painting.LINEAR, Ratio.of(10_000)))
        .paint(Ratio.of(dec(tMs)), drives);
    double[] expected = new double[12];
    expected[slot] = 1;
    assertThat(drives).containsExactly(expected);
  }

  @Test
  void lightCharacterBlinksAsOnTheChart() {
    LightCharacter light = new LightCharacter(WHITE, NONE, "Fl(2) 10s", dec("500"));
    assertThat(new Painting(light, 1, 20_000).strip(500, 20)).isEqualTo("##..##..............");
  }
}
