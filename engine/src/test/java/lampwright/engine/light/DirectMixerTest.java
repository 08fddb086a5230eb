package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.github.ajalt.colormath.model.HSV;
import com.github.ajalt.colormath.model.RGB;
import java.awt.Color;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DirectMixerTest {
  private static final Curve LINEAR = new Curve.Linear();

  private static Mixer rgbw(Curve curve, boolean whiteFromRgb) {
    return Mixers.forPixel(
        curve, ColourMatching.DIRECT, whiteFromRgb, Packages.fitted(Packages.bench()));
  }

  private static double[] mix(Mixer mixer, Colour colour) {
    double[] into = new double[4];
    mixer.mix(colour).write(1, into, 0);
    return into;
  }

  @Property(tries = 1000, seed = "51")
  void hexconeAgreesWithALibrary(
      @ForAll @Scale(5) @DoubleRange(min = 0, max = 360) double degrees,
      @ForAll @Scale(5) @DoubleRange(min = 0, max = 1) double saturation) {
    double[] codes = new double[3];
    Hexcone.codes(degrees / 60, saturation, codes, 0);

    RGB expected = new HSV((float) degrees, (float) saturation, 1f, 1f).toSRGB();
    assertThat(codes[0]).isCloseTo(expected.getR(), within(1e-5));
    assertThat(codes[1]).isCloseTo(expected.getG(), within(1e-5));
    assertThat(codes[2]).isCloseTo(expected.getB(), within(1e-5));
  }

  @Property(tries = 1000, seed = "52")
  void hueAgreesWithTheJavaPlatform(
      @ForAll @Scale(5) @DoubleRange(min = 0, max = 1) double turns,
      @ForAll @Scale(5) @DoubleRange(min = 0, max = 1) double saturation) {
    double[] drives = new double[4];
    rgbw(LINEAR, false).mixHue(turns, saturation, 1, drives, 0);

    Color expected = new Color(Color.HSBtoRGB((float) turns, (float) saturation, 1f));
    assertThat(255 * drives[0]).isCloseTo(expected.getRed(), within(0.51));
    assertThat(255 * drives[1]).isCloseTo(expected.getGreen(), within(0.51));
    assertThat(255 * drives[2]).isCloseTo(expected.getBlue(), within(0.51));
  }

  @ParameterizedTest
  @CsvSource({
    "0, 1, 0, 0",
    "60, 1, 1, 0",
    "120, 0, 1, 0",
    "180, 0, 1, 1",
    "240, 0, 0, 1",
    "300, 1, 0, 1",
    "360, 1, 0, 0"
  })
  void sixthsOfTheCircleArePureCodes(double degrees, double r, double g, double b) {
    assertThat(mix(rgbw(LINEAR, false), new Colour.Hue(degrees, 1))).containsExactly(r, g, b, 0);
  }

  // 128/255 to the power 2.2, by hand with logarithms: exp(2.2 ln 0.501961) = 0.219520.
  @Test
  void codeGoesThroughTheCurveAndWhiteStaysDark() {
    double[] drives = mix(rgbw(Curve.DEFAULT, false), new Colour.Srgb(255, 128, 0));

    assertThat(drives).containsExactly(new double[] {1, 0.219520, 0, 0}, within(1e-6));
  }

  // IEC 61966-2-1: #808080 decodes to 0.21586.
  @Test
  void srgbCurveDecodesGrey() {
    double[] drives = mix(rgbw(new Curve.Srgb(), false), new Colour.Srgb(128, 128, 128));

    assertThat(drives[1]).isCloseTo(0.21586, within(0.000005));
  }

  @Property(tries = 300, seed = "53")
  void whiteFromRgbMovesTheLeastDrive(
      @ForAll @IntRange(max = 255) int r,
      @ForAll @IntRange(max = 255) int g,
      @ForAll @IntRange(max = 255) int b) {
    double[] plain = mix(rgbw(Curve.DEFAULT, false), new Colour.Srgb(r, g, b));
    double[] moved = mix(rgbw(Curve.DEFAULT, true), new Colour.Srgb(r, g, b));

    double least = Math.min(plain[0], Math.min(plain[1], plain[2]));
    assertThat(moved[3]).isEqualTo(least);
    for (int i = 0; i < 3; i++) {
      assertThat(moved[i]).isEqualTo(plain[i] - least);
    }
  }

  @Test
  void kelvinIsMatchedThoughColoursAreDirect() {
    double[] drives = mix(rgbw(LINEAR, false), new Colour.Kelvin(4000));

    // Greatest-luminance mix by SciPy 1.17 linprog.
    assertThat(drives).containsExactly(new double[] {1, 0.9368, 0.0404, 1}, within(0.001));
  }
}
