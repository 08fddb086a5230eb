package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SeriesResistorTest {
  // By hand: (12 - 3 x 2.1) / 0.02 = 285 ohm, so 300 ohm (IEC 60063); 0.02^2 x 300 = 0.12 W, so
  // 1/4 W; 5.7 / 300 = 19 mA.
  @Test
  void stringOfAmbersOnTwelveVoltsIsWorkedOut() {
    SeriesResistor resistor = SeriesResistor.of(12, 3, 2.1, 20).orElseThrow();

    assertThat(resistor.exactOhms()).isCloseTo(285, within(1e-9));
    assertThat(resistor.ohms()).isEqualTo(300);
    assertThat(resistor.watts()).isCloseTo(0.12, within(1e-12));
    assertThat(resistor.ratingWatts()).hasValue(0.25);
    assertThat(resistor.milliamps()).isCloseTo(19, within(1e-9));
  }

  // IEC 60063, E24: a value of the series serves itself, a little more asks for the next.
  @ParameterizedTest
  @CsvSource({
    "150, 150",
    "150.1, 160",
    "91, 91",
    "91.5, 100",
    "99.9, 100",
    "100, 100",
    "4.7, 4.7",
    "4.71, 5.1",
    "0.91, 0.91",
    "0.95, 1",
    "9100000, 9100000",
    "1e8, 1e8",
    "3.3, 3.3"
  })
  void nextValueOfTheSeriesIsTaken(double wanted, double value) {
    assertThat(SeriesResistor.e24AtLeast(wanted)).isEqualTo(value);
  }

  // (5 - 2) / 0.02 is 150 but for rounding.
  @Test
  void roundingDoesNotCostAStepOfTheSeries() {
    assertThat(SeriesResistor.of(5, 1, 2, 20).orElseThrow().ohms()).isEqualTo(150);
    assertThat(SeriesResistor.of(5, 1, 2.1, 10).orElseThrow().ohms()).isEqualTo(300);
  }

  @ParameterizedTest
  @CsvSource({"5, 2, 2.5", "5, 3, 2.1", "6.3, 3, 2.1", "5, 1, 100"})
  void stringThatNeedsAllOfTheSupplyCannotLight(double supply, int leds, double forward) {
    assertThat(SeriesResistor.of(supply, leds, forward, 20)).isEmpty();
  }

  // Practice: at least twice the dissipation. 0.25 A through 30 ohm are 1.875 W: 5 W.
  @ParameterizedTest
  @CsvSource({"9, 250, 5", "5, 20, 0.125"})
  void ratingIsTwiceTheDissipation(double supply, double milliamps, double rating) {
    assertThat(SeriesResistor.of(supply, 1, 2, milliamps).orElseThrow().ratingWatts())
        .hasValue(rating);
  }

  @Test
  void greatDissipationHasNoUsualRating() {
    assertThat(SeriesResistor.of(24, 1, 2, 500).orElseThrow().ratingWatts()).isEmpty();
  }

  @Property(tries = 500, seed = "81")
  void currentNeverExceedsWhatWasAskedFor(
      @ForAll @DoubleRange(min = 3, max = 48) double supply,
      @ForAll @DoubleRange(min = 1.5, max = 2.9) double forward,
      @ForAll @DoubleRange(min = 0.1, max = 1000) double milliamps) {
    SeriesResistor resistor = SeriesResistor.of(supply, 1, forward, milliamps).orElseThrow();

    assertThat(resistor.milliamps()).isLessThanOrEqualTo(milliamps * (1 + 1e-9));
    // Neighbours in E24 are at most 15.4 % apart, as 1.3 and 1.5 are.
    assertThat(resistor.ohms())
        .isBetween(resistor.exactOhms() * (1 - 1e-9), resistor.exactOhms() * 1.155);
  }

  @Test
  void valuesOutOfRangeAreRefused() {
    assertThatThrownBy(() -> SeriesResistor.of(Double.NaN, 1, 2, 20))
        .hasMessage("supply volts: NaN: must be between 0.1 and 1,000");
    assertThatThrownBy(() -> SeriesResistor.of(5, 0, 2, 20))
        .hasMessage("LEDs in series: 0: must be between 1 and 1,000");
    assertThatThrownBy(() -> SeriesResistor.of(5, 1, 0, 20))
        .hasMessage("forward volts: 0: must be between 0.1 and 100");
    assertThatThrownBy(() -> SeriesResistor.of(5, 1, 2, 0))
        .hasMessage("milliamps: 0: must be between 0.01 and 100,000");
  }

  /** By hand: 0.1 V at 20 mA are 5 ohm, 5.1 in E24; 0.35 V over that at 5.25 V are 68.6 mA. */
  @Test
  void littleDropMultipliesTheCurrentOfAHighSupply() {
    SeriesResistor resistor = SeriesResistor.of(5, 1, 4.9, 20).orElseThrow();

    assertThat(resistor.dropVolts()).isCloseTo(0.1, within(1e-9));
    assertThat(resistor.milliamps()).isCloseTo(100 / 5.1, within(1e-6));
    assertThat(resistor.milliampsAtHighSupply()).isCloseTo(350 / 5.1, within(1e-6));
    assertThat(resistor.hasMargin()).isFalse();
  }

  /** Practice: a fifth of the supply; 1 V of 5 V, 2.4 V of 12 V. */
  @ParameterizedTest
  @CsvSource({"5, 4.0, true", "5, 4.01, false", "12, 9.6, true", "12, 9.7, false"})
  void aFifthOfTheSupplyIsEnough(double supply, double forward, boolean enough) {
    assertThat(SeriesResistor.of(supply, 1, forward, 20).orElseThrow().hasMargin())
        .isEqualTo(enough);
  }
}
