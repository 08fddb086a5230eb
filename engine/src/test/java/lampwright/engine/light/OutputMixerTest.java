package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** A driver output has one emitter: a colour says only how strong it shines. */
class OutputMixerTest {
  private final Mixer mixer = Mixers.forOutput(new Curve.Power(2));

  private double[] mix(Colour colour) {
    double[] into = {9, 9, 9, 9};
    mixer.mix(colour).write(1, into, 0);
    return into;
  }

  // By hand: 204 / 255 is 0.8, its square 0.64.
  @Test
  void greatestCodeGoesThroughTheCurveWhicheverItIs() {
    double[] expected = {0.64, 0, 0, 0};
    assertThat(mix(new Colour.Srgb(204, 51, 102))).containsExactly(expected, within(1e-15));
    assertThat(mix(new Colour.Srgb(51, 204, 102))).containsExactly(expected, within(1e-15));
    assertThat(mix(new Colour.Srgb(51, 102, 204))).containsExactly(expected, within(1e-15));
  }

  @Test
  void greatestDriveStandsAsItIs() {
    assertThat(mix(new Colour.Drive(0.5, 0.1, 0.2, 0.3))).containsExactly(0.5, 0, 0, 0);
    assertThat(mix(new Colour.Drive(0.1, 0.5, 0.2, 0.3))).containsExactly(0.5, 0, 0, 0);
    assertThat(mix(new Colour.Drive(0.1, 0.2, 0.5, 0.3))).containsExactly(0.5, 0, 0, 0);
    assertThat(mix(new Colour.Drive(0.1, 0.2, 0.3, 0.5))).containsExactly(0.5, 0, 0, 0);
  }

  @Test
  void huesAndWhitesAndSignalsAreFullOn() {
    assertThat(mix(new Colour.Hue(77, 0.3))).containsExactly(1, 0, 0, 0);
    assertThat(mix(new Colour.Kelvin(3000))).containsExactly(1, 0, 0, 0);
    assertThat(mix(new Colour.Signal(SignalColour.AMBER))).containsExactly(1, 0, 0, 0);
  }

  @Test
  void lightIsTheDriveOfTheOneEmitterWhereItIsWritten() {
    double[] into = {9, 9, 9, 9, 9, 9};
    mixer.mixHue(0.2, 1, 0.25, into, 1);
    assertThat(into).containsExactly(9, 0.25, 0, 0, 0, 9);
    mixer.mixKelvin(3000, 1, 0.5, into, 1);
    assertThat(into).containsExactly(9, 0.5, 0, 0, 0, 9);
  }

  @Test
  void allWhitesAreAlikeAndTheFirstPlaceAloneCounts() {
    assertThat(mixer.kelvinLuminance(2000)).isEqualTo(1);
    assertThat(mixer.has(EmitterKind.RED)).isTrue();
    assertThat(mixer.has(EmitterKind.GREEN)).isFalse();
    assertThat(mixer.has(EmitterKind.BLUE)).isFalse();
    assertThat(mixer.has(EmitterKind.WHITE)).isFalse();
  }
}
