package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Mixes that come out by hand. Emitters of 1,000 y mcd have X + Y + Z of 1,000 each, so that the
 * chromaticity of a mix is the mean of theirs weighted by the drives.
 */
class MixByHandTest {
  private static final Mixer DIRECT =
      Mixers.forPixel(
          new Curve.Linear(), ColourMatching.DIRECT, false, Packages.fitted(Packages.bench()));

  private static Emitter alike(double x, double y) {
    return Packages.emitter(x, y, 1000 * y);
  }

  private static double[] least(
      Map<EmitterKind, Emitter> light, double[] milliamps, Chromaticity target, double share) {
    Map<EmitterKind, FittedEmitter> pixel = new EnumMap<>(EmitterKind.class);
    light.forEach((k, e) -> pixel.put(k, new FittedEmitter(e, milliamps[k.slot()])));
    Gamut gamut = new Gamut(light);
    double[] drives = new double[4];
    gamut.unsplit(target.x(), target.y(), Double.POSITIVE_INFINITY, drives, 0);
    new LeastCurrent(gamut, pixel).write(drives, 0, share, drives, 0);
    return drives;
  }

  // Red lies half way between green and blue, so that it stands for half of each; white is apart.
  // The target is 0.6 of red and 0.4 of white, brightest with white full: 2.5 times as much.
  @Test
  void emitterThatTwoOthersReplaceIsUsedOnlyIfItDrawsLess() {
    Map<EmitterKind, Emitter> light =
        Packages.rgbw(alike(0.2, 0.4), alike(0.2, 0.6), alike(0.2, 0.2), alike(0.5, 0.3));
    Chromaticity target = new Chromaticity(0.32, 0.36);

    assertThat(least(light, new double[] {100, 20, 20, 20}, target, 0.2))
        .containsExactly(new double[] {0, 0.15, 0.15, 0.2}, within(1e-9));
    assertThat(least(light, new double[] {0, 20, 20, 20}, target, 0.2))
        .containsExactly(new double[] {0.3, 0, 0, 0.2}, within(1e-9));
  }

  // Without white: X + Y + Z of the three at full is 3,000; a quarter is 0.75 of red.
  @Test
  void replacedEmitterServesWhereWhiteIsDark() {
    Map<EmitterKind, Emitter> light =
        Packages.rgbw(alike(0.2, 0.4), alike(0.2, 0.6), alike(0.2, 0.2), alike(0.5, 0.3));
    Chromaticity target = new Chromaticity(0.2, 0.4);

    assertThat(least(light, new double[] {100, 20, 20, 20}, target, 0.25))
        .containsExactly(new double[] {0, 0.375, 0.375, 0}, within(1e-9));
    assertThat(least(light, new double[] {0, 20, 20, 20}, target, 0.25))
        .containsExactly(new double[] {0.75, 0, 0, 0}, within(1e-9));
  }

  // A parallelogram: red and white together are green and blue together. The target is 0.3 green,
  // 0.1 blue and 0.6 white, brightest with white full; at half the light each is 0.5 / 0.6 of that.
  @Test
  void whiteOutsideTheTriangleIsUsedNoLessThanTheColourNeeds() {
    Map<EmitterKind, Emitter> light =
        Packages.rgbw(alike(0.5, 0.2), alike(0.5, 0.5), alike(0.2, 0.2), alike(0.2, 0.5));
    Chromaticity target = new Chromaticity(0.29, 0.47);

    assertThat(least(light, new double[] {20, 20, 20, 1000}, target, 0.5))
        .containsExactly(new double[] {0, 0.25, 0.25 / 3, 0.5}, within(1e-9));
    assertThat(least(light, new double[] {1, 20, 20, 1}, target, 0.5))
        .containsExactly(new double[] {0.25 / 3, 0.5 / 3, 0, 1.75 / 3}, within(1e-9));
  }

  // White is at the centroid and as bright as the others together, 960 mcd: all full give 1,920.
  @ParameterizedTest
  @CsvSource({"29.9, 0, 0.5", "30, 0, 0.5", "30.1, 0.5, 0"})
  void ofEqualCurrentsTheOneWithMostWhiteIsTaken(double milliamps, double rgb, double white) {
    Map<EmitterKind, Emitter> light =
        Packages.rgbw(
            alike(0.6, 0.3), alike(0.3, 0.6), alike(0.15, 0.06), Packages.emitter(0.35, 0.32, 960));

    assertThat(
            least(light, new double[] {10, 10, 10, milliamps}, new Chromaticity(0.35, 0.32), 0.25))
        .containsExactly(new double[] {rgb, rgb, rgb, white}, within(1e-9));
  }

  @Test
  void directCodesDriveTheirOwnEmitters() {
    double[] into = new double[4];
    Mix mix = DIRECT.mix(new Colour.Srgb(51, 102, 204));
    mix.write(1, into, 0);
    assertThat(into).containsExactly(new double[] {0.2, 0.4, 0.8, 0}, within(1e-15));
    mix.write(0.5, into, 0);
    assertThat(into).containsExactly(new double[] {0.1, 0.2, 0.4, 0}, within(1e-15));
    mix.dimmed(0.5).write(0.5, into, 0);
    assertThat(into).containsExactly(new double[] {0.05, 0.1, 0.2, 0}, within(1e-15));
  }

  @Test
  void mixersKnowTheEmittersOfTheirPackage() {
    Map<EmitterKind, FittedEmitter> rgb = Packages.fitted(Packages.bench());
    rgb.remove(EmitterKind.WHITE);
    for (ColourMatching matching : ColourMatching.values()) {
      Mixer four =
          Mixers.forPixel(new Curve.Linear(), matching, false, Packages.fitted(Packages.bench()));
      Mixer three = Mixers.forPixel(new Curve.Linear(), matching, false, rgb);
      for (EmitterKind kind : EmitterKind.values()) {
        assertThat(four.has(kind)).isTrue();
        assertThat(three.has(kind)).isEqualTo(kind != EmitterKind.WHITE);
      }
    }
  }

  /** The linear programme of GamutTest gives 3,059.1 mcd at the chromaticity of 4,000 K. */
  @Test
  void whiteOf4000KelvinIsAsBrightAsItCanBe() {
    assertThat(DIRECT.kelvinLuminance(4000)).isCloseTo(3059.1, within(0.5));
    assertThat(
            new MatchedMixer(Packages.fitted(Packages.bench()))
                .explain(new Colour.Kelvin(4000))
                .orElseThrow()
                .millicandela())
        .isCloseTo(3059.1, within(0.5));
  }

  /** IEC 61966-2-1 gives the chromaticities of the primaries to two digits. */
  @ParameterizedTest
  @CsvSource({
    "255, 0, 0, 0, 0.64, 0.33",
    "0, 255, 0, 120, 0.30, 0.60",
    "0, 0, 255, 240, 0.15, 0.06"
  })
  void coloursNameTheChromaticitiesOfSrgb(
      int red, int green, int blue, double degrees, double x, double y) {
    Chromaticity srgb = MatchedMixer.target(new Colour.Srgb(red, green, blue)).orElseThrow();
    assertThat(srgb.x()).isCloseTo(x, within(0.001));
    assertThat(srgb.y()).isCloseTo(y, within(0.001));
    Chromaticity hue = MatchedMixer.target(new Colour.Hue(degrees, 1)).orElseThrow();
    assertThat(hue.x()).isCloseTo(x, within(0.001));
    assertThat(hue.y()).isCloseTo(y, within(0.001));
  }

  // Codes 1, 0.4, 0.4; 0.4 is ((0.4 + 0.055) / 1.055)^2.4 = 0.13287 of light. X = 0.4124 + 0.13287
  // x
  // 0.5381 = 0.48390, Y = 0.2126 + 0.13287 x 0.7874 = 0.31722, Z = 0.0193 + 0.13287 x 1.0697 =
  // 0.16143: their sum is 0.96255.
  @Test
  void paleHueIsDecodedBeforeItIsMixed() {
    Chromaticity pink = MatchedMixer.target(new Colour.Hue(0, 0.6)).orElseThrow();
    assertThat(pink.x()).isCloseTo(0.50273, within(0.0001));
    assertThat(pink.y()).isCloseTo(0.32956, within(0.0001));
  }

  /** A hue's luminance is told as that of the same colour in codes. */
  @Test
  void hueIsAsBrightAsItsCodes() {
    MatchedMixer mixer = new MatchedMixer(Packages.fitted(Packages.bench()));
    double codes = mixer.explain(new Colour.Srgb(255, 102, 102)).orElseThrow().millicandela();
    double hue = mixer.explain(new Colour.Hue(0, 0.6)).orElseThrow().millicandela();
    assertThat(codes).isGreaterThan(100);
    assertThat(hue).isCloseTo(codes, within(1e-9));
  }

  /** IEC 61966-2-1: up to and with 0.04045 the light is the code over 12.92. */
  @Test
  void srgbIsStraightUpToItsEdge() {
    assertThat(Curve.Srgb.decode(0.04045)).isEqualTo(0.04045 / 12.92);
  }

  // Hue 120 at half saturation has the codes 0.5, 1, 0.5.
  @Test
  void directHueIsWrittenAtItsLightWhereItIsAsked() {
    double[] into = {9, 9, 9, 9, 9, 9};
    DIRECT.mixHue(1.0 / 3, 0.5, 0.5, into, 1);
    assertThat(into).containsExactly(new double[] {9, 0.25, 0.5, 0.25, 0, 9}, within(1e-12));
  }

  /** The linear programme of GamutTest gives these drives at the chromaticity of 4,000 K. */
  @Test
  void directWhiteIsMatched() {
    double[] into = {9, 9, 9, 9, 9, 9};
    DIRECT.mixKelvin(4000, Double.POSITIVE_INFINITY, 1, into, 1);
    assertThat(into).containsExactly(new double[] {9, 1, 0.9368, 0.0404, 1, 9}, within(0.001));
  }

  @Test
  void dimmedMatchIsThatOfLessLight() {
    Mix mix = new MatchedMixer(Packages.fitted(Packages.bench())).mix(new Colour.Kelvin(4000));
    double[] expected = new double[4];
    mix.write(0.25, expected, 0);
    double[] dimmed = new double[4];
    mix.dimmed(0.5).write(0.5, dimmed, 0);
    assertThat(dimmed).containsExactly(expected, within(1e-12));
  }
}
