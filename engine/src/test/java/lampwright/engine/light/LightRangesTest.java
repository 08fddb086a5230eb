package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Values at the ends of their ranges are taken, those past them refused by name. */
class LightRangesTest {
  private static void refused(String name, ThrowingCallable makes) {
    assertThatThrownBy(makes)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(name);
  }

  @Test
  void chromaticityLiesInTheDiagram() {
    for (double x : new double[] {0, 0.5}) {
      assertThat(new Chromaticity(x, 1 - x).x()).isEqualTo(x);
    }
    assertThat(new Chromaticity(1, 1e-10).y()).isEqualTo(1e-10);
    refused("x", () -> new Chromaticity(-0.001, 0.3));
    refused("x", () -> new Chromaticity(1.001, 0.3));
    refused("y", () -> new Chromaticity(0.3, 0));
    refused("y", () -> new Chromaticity(0, 1.001));
    refused("0.6 + 0.5: x + y must be at most 1", () -> new Chromaticity(0.6, 0.5));
  }

  @Test
  void srgbCodesAreBytes() {
    assertThatCode(() -> new Colour.Srgb(0, 255, 0)).doesNotThrowAnyException();
    refused("red", () -> new Colour.Srgb(256, 0, 0));
    refused("green", () -> new Colour.Srgb(0, -1, 0));
    refused("blue", () -> new Colour.Srgb(0, 0, 256));
  }

  @Test
  void hueIsACircleAndSaturationAShare() {
    assertThatCode(() -> new Colour.Hue(360, 1)).doesNotThrowAnyException();
    refused("hue", () -> new Colour.Hue(360.5, 1));
    refused("saturation", () -> new Colour.Hue(0, 1.5));
  }

  @Test
  void kelvinIsFrom1667To25000() {
    assertThat(new Colour.Kelvin(1667).kelvin()).isEqualTo(1667);
    assertThat(new Colour.Kelvin(25000).kelvin()).isEqualTo(25000);
    refused("kelvin", () -> new Colour.Kelvin(1666.9));
    refused("kelvin", () -> new Colour.Kelvin(25000.1));
  }

  @Test
  void drivesAreShares() {
    assertThatCode(() -> new Colour.Drive(0, 1, 0, 1)).doesNotThrowAnyException();
    refused("drive: r:", () -> new Colour.Drive(1.1, 0, 0, 0));
    refused("drive: g:", () -> new Colour.Drive(0, -0.1, 0, 0));
    refused("drive: b:", () -> new Colour.Drive(0, 0, 1.1, 0));
    refused("drive: w:", () -> new Colour.Drive(0, 0, 0, -0.1));
  }

  @Test
  void emitterHasACurrentOfAtMost10000Milliamps() {
    Emitter light = Packages.emitter(0.3, 0.3, 1);
    assertThat(new FittedEmitter(light, 10_000).milliamps()).isEqualTo(10_000);
    refused("milliamps", () -> new FittedEmitter(light, 10_001));
    refused("milliamps", () -> new FittedEmitter(light, -1));
  }

  @Test
  void spectraAreAskedForWithinTheirRanges() {
    refused("peak", () -> Spectrum.gaussian(399, 20));
    refused("full width at half maximum", () -> Spectrum.gaussian(550, 101));
    refused("wavelength", () -> Spectrum.monochromatic(701));
    refused("dominant wavelength", () -> Spectrum.peakOfDominant(439, 20));
    refused("full width at half maximum", () -> Spectrum.peakOfDominant(550, 51));
  }

  /** CIE 15: light of 780 nm lies where the long waves all do, (0.7347, 0.2653). */
  @Test
  void spectrumReachesFrom380To780Nanometres() {
    Chromaticity last = Spectrum.chromaticity(nm -> nm == 780 ? 1 : 0);
    // The table gives the observer's values there to two digits.
    assertThat(last.distanceTo(new Chromaticity(0.7347, 0.2653))).isLessThan(0.02);
    refused("spectrum", () -> Spectrum.chromaticity(nm -> 0));
    refused("spectrum", () -> Spectrum.chromaticity(nm -> Double.POSITIVE_INFINITY));
    refused("spectrum", () -> Spectrum.chromaticity(nm -> 1e308));
  }

  /** The words of docs/formats.md. */
  @Test
  void projectFilesNameThemByTheseWords() {
    assertThat(List.of(ColourMatching.values()))
        .extracting(ColourMatching::key)
        .containsExactly("direct", "emitters");
    assertThat(List.of(SignalColour.values()))
        .extracting(SignalColour::key)
        .containsExactly("amber", "red", "white", "blue", "green", "selective-yellow");
  }

  @ParameterizedTest
  @CsvSource({"RED, R, r, 0", "GREEN, G, g, 1", "BLUE, B, b, 2", "WHITE, W, w, 3"})
  void emittersHaveTheLettersOfByteOrders(EmitterKind kind, char letter, String key, int slot) {
    assertThat(kind.letter()).isEqualTo(letter);
    assertThat(kind.key()).isEqualTo(key);
    assertThat(kind.slot()).isEqualTo(slot);
  }
}
