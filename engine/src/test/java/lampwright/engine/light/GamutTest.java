package lampwright.engine.light;

import static lampwright.engine.light.Packages.bench;
import static lampwright.engine.light.Packages.emitter;
import static lampwright.engine.light.Packages.rgb;
import static lampwright.engine.light.Packages.rgbw;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GamutTest {
  private static final Emitter RED = emitter(0.700, 0.299, 405);
  private static final Emitter GREEN = emitter(0.170, 0.700, 690);
  private static final Emitter BLUE = emitter(0.136, 0.050, 190);

  // Computed with the linear-programme solver of SciPy 1.17 (linprog) for these points, which are
  // those of the Planckian locus at 2,700, 3,000, 4,000, 5,000, 6,500 and 10,000 K by the
  // colour-science library 0.4 for Python.
  @ParameterizedTest
  @CsvSource({
    "0.45986, 0.41060, 1.0000, 0.7367, 0.0000, 0.1758, 1265.0",
    "0.43693, 0.40408, 1.0000, 0.7826, 0.0000, 0.2879, 1520.9",
    "0.38044, 0.37675, 1.0000, 0.9368, 0.0404, 1.0000, 3059.1",
    "0.34510, 0.35161, 0.7746, 1.0000, 0.2514, 1.0000, 3051.5",
    "0.31353, 0.32363, 0.5610, 1.0000, 0.4918, 1.0000, 3010.7",
    "0.28063, 0.28829, 0.3705, 1.0000, 0.8518, 1.0000, 3001.9"
  })
  void brightestMixAgreesWithALinearProgramme(
      double x, double y, double r, double g, double b, double w, double light) {
    MatchedMix mix = new Gamut(bench()).brightest(new Chromaticity(x, y));

    assertThat(mix.drives().r()).isCloseTo(r, within(0.0001));
    assertThat(mix.drives().g()).isCloseTo(g, within(0.0001));
    assertThat(mix.drives().b()).isCloseTo(b, within(0.0001));
    assertThat(mix.drives().w()).isCloseTo(w, within(0.0001));
    assertThat(mix.millicandela()).isCloseTo(light, within(0.1));
    assertThat(mix.reachesTarget()).isTrue();
    assertThat(mix.reached()).isEqualTo(mix.target());
  }

  // By hand: equal sums X+Y+Z (each mcd is 1,000 x y) make the drives the weights of the centroid.
  @Test
  void threeAlikeEmittersAreAllFullAtTheirCentroid() {
    Gamut gamut =
        new Gamut(rgb(emitter(0.6, 0.3, 300), emitter(0.3, 0.6, 600), emitter(0.15, 0.06, 60)));

    MatchedMix mix = gamut.brightest(new Chromaticity(0.35, 0.32));

    assertThat(mix.drives().r()).isCloseTo(1, within(1e-12));
    assertThat(mix.drives().g()).isCloseTo(1, within(1e-12));
    assertThat(mix.drives().b()).isCloseTo(1, within(1e-12));
    assertThat(mix.drives().w()).isZero();
    assertThat(mix.millicandela()).isCloseTo(960, within(1e-9));
  }

  @Test
  void chromaticityOfAnEmitterIsThatEmitterAlone() {
    MatchedMix mix = new Gamut(rgb(RED, GREEN, BLUE)).brightest(GREEN.chromaticity());

    assertThat(mix.drives().g()).isEqualTo(1);
    assertThat(mix.drives().r()).isCloseTo(0, within(1e-9));
    assertThat(mix.drives().b()).isCloseTo(0, within(1e-9));
    assertThat(mix.reachesTarget()).isTrue();
  }

  // A white emitter of the very chromaticity asked for: white is full and the three add the
  // brightest mix of their own.
  @Test
  void fourthEmitterAtTheTargetAddsToTheBrightestOfTheThree() {
    Chromaticity target = new Chromaticity(0.3451, 0.3516);
    MatchedMix three = new Gamut(rgb(RED, GREEN, BLUE)).brightest(target);
    MatchedMix four = new Gamut(bench()).brightest(target);

    assertThat(four.drives().w()).isCloseTo(1, within(1e-12));
    assertThat(four.millicandela()).isCloseTo(three.millicandela() + 2000, within(1e-6));
  }

  // The white emitter lies outside the triangle of the others, as amber would.
  @Test
  void fourthEmitterOutsideTheTriangleWidensTheGamut() {
    Chromaticity yellow = new Chromaticity(0.44, 0.55);
    assertThat(new Gamut(rgb(RED, GREEN, BLUE)).contains(yellow)).isFalse();

    MatchedMix mix = new Gamut(rgbw(RED, GREEN, BLUE, emitter(0.45, 0.549, 900))).brightest(yellow);

    assertThat(mix.reachesTarget()).isTrue();
    assertThat(mix.drives().b()).isCloseTo(0, within(0.05));
  }

  @Test
  void emittersOnASideOfTheGamutServeTheirSide() {
    Emitter between = emitter((0.700 + 0.170) / 2, (0.299 + 0.700) / 2, 500);
    MatchedMix mix =
        new Gamut(rgbw(RED, GREEN, BLUE, between)).brightest(new Chromaticity(0.45, 0.549));

    assertThat(mix.reachesTarget()).isFalse();
    assertThat(mix.drives().w()).isEqualTo(1);
    assertThat(mix.drives().b()).isCloseTo(0, within(1e-9));
    assertThat(Math.max(mix.drives().r(), mix.drives().g())).isCloseTo(1, within(1e-9));
  }

  // By hand, in CIE 1976 u'v': from beyond the corner the corner is nearest.
  @Test
  void nearestMixBeyondACornerIsThatEmitter() {
    MatchedMix mix = new Gamut(rgb(RED, GREEN, BLUE)).brightest(new Chromaticity(0.08, 0.83));

    assertThat(mix.reached().x()).isCloseTo(0.170, within(1e-12));
    assertThat(mix.reached().y()).isCloseTo(0.700, within(1e-12));
    assertThat(mix.distance())
        .isCloseTo(new Chromaticity(0.08, 0.83).distanceTo(GREEN.chromaticity()), within(1e-12));
    assertThat(mix.drives().g()).isEqualTo(1);
    assertThat(mix.millicandela()).isCloseTo(690, within(1e-6));
  }

  @Test
  void missingGreenIsRefused() {
    Map<EmitterKind, Emitter> emitters = new EnumMap<>(rgb(RED, GREEN, BLUE));
    emitters.remove(EmitterKind.GREEN);

    assertThatThrownBy(() -> new Gamut(emitters))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("emitters: no g: must have at least r, g and b");
  }

  @Test
  void emittersInALineAreRefused() {
    Map<EmitterKind, Emitter> emitters =
        rgb(emitter(0.2, 0.3, 1), emitter(0.3, 0.4, 1), emitter(0.4, 0.5, 1));

    assertThatThrownBy(() -> new Gamut(emitters))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "emitters: r (0.2, 0.3) g (0.3, 0.4) b (0.4, 0.5): lie in a line or at one point:"
                + " must span a triangle in the xy diagram");
  }

  @Test
  void fourEmittersInALineAreRefused() {
    Map<EmitterKind, Emitter> emitters =
        rgbw(
            emitter(0.2, 0.3, 1),
            emitter(0.3, 0.4, 1),
            emitter(0.4, 0.5, 1),
            emitter(0.25, 0.35, 1));

    assertThatThrownBy(() -> new Gamut(emitters))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("w (0.25, 0.35)");
  }

  @Test
  void emittersAtOnePointAreRefused() {
    Map<EmitterKind, Emitter> emitters = rgb(RED, RED, RED);

    assertThatThrownBy(() -> new Gamut(emitters)).isInstanceOf(IllegalArgumentException.class);
  }

  // Red and green alike, but white completes a triangle.
  @Test
  void whiteCompletesAGamutThatTheOthersDoNotSpan() {
    Gamut gamut = new Gamut(rgbw(RED, RED, BLUE, emitter(0.3, 0.5, 100)));

    MatchedMix mix = gamut.brightest(new Chromaticity(0.35, 0.3));

    assertThat(mix.reachesTarget()).isTrue();
    assertThat(mix.drives().w()).isPositive();
    assertThat(mix.millicandela()).isFinite().isPositive();
  }

  @Test
  void emitterWithoutLuminanceIsRefused() {
    Map<EmitterKind, Emitter> emitters = rgb(RED, GREEN, emitter(0.136, 0.0009, 190));

    assertThatThrownBy(() -> new Gamut(emitters))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("emitters.b.y: 0.0009: must be between 0.001 and 1");
  }

  @Test
  void chromaticityOfYZeroIsRefused() {
    assertThatThrownBy(() -> new Chromaticity(0.2, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("chromaticity: y: 0: must be greater than 0 and at most 1");
  }

  @ParameterizedTest
  @CsvSource({"0", "-1", "NaN", "1000001", "1e-300"})
  void emitterIntensityOutOfRangeIsRefused(double millicandela) {
    assertThatThrownBy(() -> emitter(0.3, 0.3, millicandela))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("emitter: mcd: ")
        .hasMessageEndingWith("must be between 0.000001 and 1,000,000");
  }

  @Test
  void faintestAndStrongestEmittersStillMix() {
    Gamut gamut =
        new Gamut(
            rgbw(
                emitter(0.700, 0.299, 1e-6),
                emitter(0.170, 0.700, 1e6),
                emitter(0.136, 0.001, 1e6),
                emitter(0.3451, 0.3516, 1e-6)));

    MatchedMix mix = gamut.brightest(new Chromaticity(0.3, 0.3));

    assertThat(mix.millicandela()).isFinite().isPositive();
    assertThat(mix.drives().r()).isBetween(0.0, 1.0);
  }
}
