package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WireTest {
  // ASTM B258 by its formula; resistances by IEC 60028 and handbook tables.
  @ParameterizedTest
  @CsvSource({"24, 0.5106, 0.0842", "30, 0.2546, 0.3386"})
  void gaugeAgreesWithHandbooks(int gauge, double diameter, double ohmsPerMetre) {
    assertThat(Wire.gaugeDiameterMillimetres(gauge)).isCloseTo(diameter, within(0.00005));
    assertThat(Wire.ofGauge(gauge).ohmsPerMetre()).isCloseTo(ohmsPerMetre, within(0.0001));
  }

  // ASTM B258: gauge 36 is 0.005 inch and gauge 0 is 92^(36/39) times that, 0.3249 inch.
  @ParameterizedTest
  @CsvSource({"36, 0.1270", "0, 8.2515"})
  void gaugesAtTheEndsOfTheScaleAreRight(int gauge, double diameter) {
    assertThat(Wire.gaugeDiameterMillimetres(gauge)).isCloseTo(diameter, within(0.0001));
  }

  // IEC 60028: 1 m of 1 mm2 has 0.017241 ohm.
  @Test
  void squareMillimetreHasTheResistivity() {
    assertThat(new Wire(1).ohmsPerMetre()).isEqualTo(0.017241);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -1, 120.1, Double.NaN, Double.POSITIVE_INFINITY})
  void crossSectionOutOfRangeIsRefused(double area) {
    assertThatThrownBy(() -> new Wire(area))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("wire cross-section in mm2: ")
        .hasMessageEndingWith("must be between 0.001 and 120");
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 41})
  void gaugeOutOfRangeIsRefused(int gauge) {
    assertThatThrownBy(() -> Wire.ofGauge(gauge))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("wire gauge AWG: " + gauge + ": must be between 0 and 40");
  }

  // Handbook areas: AWG 26 0.129 mm2, AWG 24 0.205 mm2, AWG 22 0.326 mm2.
  @ParameterizedTest
  @CsvSource({"0.13, 24", "0.204, 24", "0.206, 22", "0, 40"})
  void thinnestGaugeThatDoesIsFound(double area, int gauge) {
    assertThat(Wire.gaugesFrom(area).get(0)).isEqualTo(gauge);
  }

  @Test
  void gaugeOfItsOwnCrossSectionDoes() {
    assertThat(Wire.gaugesFrom(Wire.ofGauge(24).squareMillimetres()).get(0)).isEqualTo(24);
  }

  @Test
  void noGaugeIsThickEnoughForEverything() {
    assertThat(Wire.gaugesFrom(60)).isEmpty();
  }

  // Practice: 5 A a mm2.
  @Test
  void thinWireIsCautionedEarly() {
    assertThat(Wire.ofGauge(30).wireLimitAmps()).isCloseTo(0.255, within(0.001));
  }

  /**
   * IPC-2221 by the tables of board makers: for 1 A and a rise of 10 K a conductor inside a board
   * of 35 um copper needs 30.8 mils of width, 0.0273 mm2; for 3 A 140 mils, 0.124 mm2.
   */
  @ParameterizedTest
  @CsvSource({"30.8, 1", "140, 3"})
  void stripCopperCarriesWhatATrackOfItsAreaDoes(double mils, double amps) {
    double area = mils * 0.0254 * 1.378 * 0.0254;
    assertThat(new Wire(area).stripLimitAmps()).isCloseTo(amps, within(0.005 * amps));
  }
}
