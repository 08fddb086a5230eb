package lampwright.engine.light;

import static lampwright.engine.light.Packages.bench;
import static lampwright.engine.light.Packages.emitter;
import static lampwright.engine.light.Packages.fitted;
import static lampwright.engine.light.Packages.rgb;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.github.ajalt.colormath.model.HSV;
import com.github.ajalt.colormath.model.XYZ;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class MatchedMixerTest {
  private final MatchedMixer mixer = new MatchedMixer(fitted(bench()));
  private final Emission emission = new Emission(bench());

  private double[] mix(Colour colour) {
    // The mixer must keep to its four places.
    double[] into = {9, 9, 9, 9, 9, 9};
    mixer.mix(colour).write(1, into, 1);
    assertThat(into[0]).isEqualTo(9);
    assertThat(into[5]).isEqualTo(9);
    return new double[] {into[1], into[2], into[3], into[4]};
  }

  @Test
  void blackIsDark() {
    assertThat(mix(new Colour.Srgb(0, 0, 0))).containsOnly(0);
  }

  // IEC 61966-2-1: white is D65, so that it is as bright as the package can be there.
  @Test
  void whiteIsTheBrightestOfD65() {
    double[] drives = mix(Colour.WHITE);

    double brightest = new Gamut(bench()).brightest(Chromaticity.D65).millicandela();
    assertThat(emission.luminance(drives, 0)).isCloseTo(brightest, within(brightest * 0.0005));
    assertThat(emission.chromaticity(drives, 0).orElseThrow().distanceTo(Chromaticity.D65))
        .isLessThan(0.0001);
  }

  // IEC 61966-2-1: #808080 has 0.21586 of white's luminance.
  @Test
  void greyHasItsShareOfWhite() {
    double white = emission.luminance(mix(Colour.WHITE), 0);
    double grey = emission.luminance(mix(new Colour.Srgb(128, 128, 128)), 0);

    // White is held to what its own chromaticity allows, which differs from D65's by rounding.
    assertThat(grey / white).isCloseTo(0.21586, within(0.0001));
  }

  // The library's own conversion from HSV to XYZ says what chromaticity and luminance are due.
  @Property(tries = 500, seed = "41")
  void hueHasTheChromaticityAndLuminanceOfItsSrgbColour(
      @ForAll @Scale(5) @DoubleRange(min = 0, max = 360) double degrees,
      @ForAll @Scale(5) @DoubleRange(min = 0, max = 0.9) double saturation) {
    XYZ expected = new HSV((float) degrees, (float) saturation, 1f, 1f).toSRGB().toXYZ();
    double sum = expected.getX() + expected.getY() + expected.getZ();
    double[] drives = new double[4];
    mixer.mixHue(degrees / 360, saturation, 1, drives, 0);

    Chromaticity emitted = emission.chromaticity(drives, 0).orElseThrow();
    assertThat(emitted.x()).isCloseTo(expected.getX() / sum, within(0.0003));
    assertThat(emitted.y()).isCloseTo(expected.getY() / sum, within(0.0003));
    double light = emission.luminance(drives, 0);
    double white = new Gamut(bench()).brightest(Chromaticity.D65).millicandela();
    double due = Math.min(expected.getY() * white, brightestAt(emitted));
    assertThat(light).isCloseTo(due, within(0.003 * white));
  }

  private static double brightestAt(Chromaticity point) {
    return new Gamut(bench()).brightest(point).millicandela();
  }

  @Test
  void hueAndItsSrgbColourAreMixedAlike() {
    assertThat(mix(new Colour.Hue(240, 1)))
        .containsExactly(mix(new Colour.Srgb(0, 0, 255)), within(1e-12));
  }

  @Test
  void hueIsMixedAlikeByDegreesAndByTurns() {
    double[] byTurns = new double[4];
    mixer.mixHue(0.25, 0.5, 1, byTurns, 0);

    assertThat(mix(new Colour.Hue(90, 0.5))).containsExactly(byTurns, within(0.0));
  }

  // Green and white are too bright for the red emitter to keep up with.
  @Test
  void colourBrighterThanTheEmittersIsAsBrightAsTheyAre() {
    double[] drives = mix(new Colour.Srgb(255, 0, 0));

    assertThat(drives[0]).isEqualTo(1);
  }

  // Computed with SciPy 1.17 (linprog) at the points of the colour-science library 0.4, whose
  // observer has more rows: the locus of the table at 5 nm lies up to 0.00006 beside it.
  @ParameterizedTest
  @CsvSource({
    "2700, 1.0000, 0.7367, 0.0000, 0.1758, 1265.0",
    "3000, 1.0000, 0.7826, 0.0000, 0.2879, 1520.9",
    "4000, 1.0000, 0.9368, 0.0404, 1.0000, 3059.1",
    "5000, 0.7746, 1.0000, 0.2514, 1.0000, 3051.5",
    "6500, 0.5610, 1.0000, 0.4918, 1.0000, 3010.7",
    "10000, 0.3705, 1.0000, 0.8518, 1.0000, 3001.9"
  })
  void kelvinIsAsBrightAsCanBe(
      double kelvin, double r, double g, double b, double w, double light) {
    double[] byColour = mix(new Colour.Kelvin(kelvin));
    double[] byNumber = new double[4];
    mixer.mixKelvin(kelvin, mixer.kelvinLuminance(kelvin), 1, byNumber, 0);

    assertThat(byColour).containsExactly(byNumber, within(0.0));
    assertThat(byColour).containsExactly(new double[] {r, g, b, w}, within(0.001));
    assertThat(emission.luminance(byColour, 0)).isCloseTo(light, within(0.3));
  }

  @Test
  void mixKelvinRefusesKelvinOutOfRange() {
    assertThatThrownBy(() -> mixer.mixKelvin(1000, 1, 1, new double[4], 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("kelvin: 1000: must be between 1,667 and 25,000");
  }

  @ParameterizedTest
  @EnumSource(SignalColour.class)
  void signalIsItsPointOrTheNearest(SignalColour signal) {
    MatchedMix told = mixer.explain(new Colour.Signal(signal)).orElseThrow();
    double[] drives = mix(new Colour.Signal(signal));

    assertThat(told.target()).isEqualTo(signal.chromaticity());
    assertThat(emission.chromaticity(drives, 0).orElseThrow().distanceTo(told.reached()))
        .isLessThan(1e-6);
    assertThat(drives).contains(1);
  }

  @Test
  void amberIsReachedByAGreenNearTheLocus() {
    MatchedMixer saturated =
        new MatchedMixer(
            fitted(
                rgb(
                    emitter(0.7006, 0.2993, 405),
                    emitter(0.33, 0.66, 690),
                    emitter(0.136, 0.05, 190))));

    MatchedMix told = saturated.explain(new Colour.Signal(SignalColour.AMBER)).orElseThrow();

    assertThat(told.reachesTarget()).isTrue();
    assertThat(told.drives().r()).isEqualTo(1);
  }

  @Test
  void colourOutOfReachIsTold() {
    // A package of pastel emitters reaches no signal red.
    MatchedMixer pastel =
        new MatchedMixer(
            fitted(rgb(emitter(0.45, 0.33, 100), emitter(0.3, 0.45, 100), emitter(0.2, 0.2, 100))));

    MatchedMix told = pastel.explain(new Colour.Signal(SignalColour.RED)).orElseThrow();

    assertThat(told.reachesTarget()).isFalse();
    assertThat(told.distance()).isGreaterThan(0.1);
    assertThat(told.reached().x()).isCloseTo(0.45, within(1e-9));
  }

  @Test
  void explainedDrivesAndLightAreThoseMixed() {
    Colour dim = new Colour.Srgb(40, 60, 50);
    MatchedMix told = mixer.explain(dim).orElseThrow();
    double[] drives = mix(dim);

    assertThat(told.drives())
        .isEqualTo(new Colour.Drive(drives[0], drives[1], drives[2], drives[3]));
    assertThat(told.millicandela()).isCloseTo(emission.luminance(drives, 0), within(1e-6));
  }

  @Test
  void blackAndDrivesNameNoChromaticity() {
    assertThat(mixer.explain(new Colour.Srgb(0, 0, 0))).isEmpty();
    assertThat(mixer.explain(new Colour.Drive(1, 0, 0, 0))).isEmpty();
  }

  @Test
  void drivesPassThrough() {
    assertThat(mix(new Colour.Drive(0.1, 0.2, 0.3, 0.4))).containsExactly(0.1, 0.2, 0.3, 0.4);
  }

  @Test
  void driveOfAnEmitterThatIsNotThereStaysZero() {
    Map<EmitterKind, Emitter> three = bench();
    three.remove(EmitterKind.WHITE);
    MatchedMixer mixer3 = new MatchedMixer(fitted(three));
    double[] into = new double[4];
    mixer3.mix(new Colour.Drive(0.1, 0.2, 0.3, 0.4)).write(1, into, 0);

    assertThat(into).containsExactly(0.1, 0.2, 0.3, 0);
    assertThat(mixer3.has(EmitterKind.WHITE)).isFalse();
    assertThat(mixer.has(EmitterKind.WHITE)).isTrue();
  }
}
