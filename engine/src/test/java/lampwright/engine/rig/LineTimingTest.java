package lampwright.engine.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import lampwright.engine.check.InvalidModelException;
import org.junit.jupiter.api.Test;

class LineTimingTest {
  private static LineTiming line(String type) {
    return BuiltInPixelTypes.find(type).orElseThrow().line();
  }

  /** WS2812B datasheet: 0.40, 0.85, 0.80, 0.45 us, each +-0.15; TH+TL 1.25 us +-0.6. */
  @Test
  void toleranceIsToBothSides() {
    LineTiming line = line("ws2812b");

    assertThat(line.times())
        .extracting(LineTime::nominalNs)
        .containsExactly(400., 850., 800., 450.);
    assertThat(line.times()).extracting(LineTime::leastNs).containsExactly(250., 700., 650., 300.);
    assertThat(line.times())
        .extracting(LineTime::greatestNs)
        .containsExactly(550., 1000., 950., 600.);
    assertThat(line.toleranceNs()).contains(150.);
    assertThat(line.bit()).contains(new LineTime.Range(650, 1850));
    assertThat(line.nominal(false)).isEqualTo(new BitTimes(400, 850));
    assertThat(line.nominal(true)).isEqualTo(new BitTimes(800, 450));
  }

  /**
   * WS2813 manual: T0H 300-450, T1H 750-1,000 ns; T0L, T1L 300 ns to 100 us; TH+TL 1.25 us +-0.3.
   */
  @Test
  void wideLowTimeIsNominallyWhatTheHighTimeLeavesOfTheBit() {
    LineTiming line = line("ws2813");

    assertThat(line.times()).extracting(LineTime::leastNs).containsExactly(300., 300., 750., 300.);
    assertThat(line.times())
        .extracting(LineTime::greatestNs)
        .containsExactly(450., 100_000., 1000., 100_000.);
    assertThat(line.bit()).contains(new LineTime.Range(950, 1550));
    assertThat(line.toleranceNs()).isEmpty();
    assertThat(line.nominal(false)).isEqualTo(new BitTimes(375, 875));
    assertThat(line.nominal(true)).isEqualTo(new BitTimes(875, 375));
    assertThat(line.nominal(true).bitNs()).isEqualTo(1250);
  }

  @Test
  void nominalLowTimeStaysWithinItsRange() {
    LineTime high = new LineTime.Range(400, 600);
    LineTime low = new LineTime.Range(800, 900);
    LineTiming line =
        new LineTiming(high, low, high, low, Optional.of(new LineTime.Range(1000, 1100)), 80);

    assertThat(line.nominal(false)).isEqualTo(new BitTimes(500, 800));
  }

  @Test
  void withoutLimitsOfTheBitTheMiddleIsNominal() {
    LineTime high = new LineTime.Range(220, 380);
    LineTime low = new LineTime.Range(580, 1000);

    assertThat(new LineTiming(high, low, high, low, Optional.empty(), 80).nominal(true))
        .isEqualTo(new BitTimes(300, 790));
  }

  @Test
  void toleranceAboveTheTimeLeavesNoNegativeTime() {
    assertThat(new LineTime.Nominal(300, 400).leastNs()).isZero();
  }

  @Test
  void everyFaultIsNamedByItsField() {
    assertThatThrownBy(
            () ->
                new LineTiming(
                    new LineTime.Nominal(0, 150),
                    new LineTime.Range(0, 5),
                    new LineTime.Range(7, 2_000_000),
                    new LineTime.Range(9, 8),
                    Optional.of(new LineTime.Range(Double.NaN, 8)),
                    0))
        .isInstanceOfSatisfying(
            InvalidModelException.class,
            refused ->
                assertThat(refused.faults())
                    .extracting(f -> f.field() + ": " + f.value())
                    .containsExactly(
                        "t0hNs: 0",
                        "t0lNs[0]: 0",
                        "t1hNs[1]: 2000000",
                        "t1lNs: 9 to 8",
                        "bitNs[0]: NaN",
                        "resetUs: 0"));
  }

  @Test
  void timesThatMayBeOffHaveOneTolerance() {
    LineTime a = new LineTime.Nominal(300, 150);
    LineTime b = new LineTime.Nominal(300, 80);

    assertThatThrownBy(() -> new LineTiming(a, b, a, b, Optional.empty(), 80))
        .isInstanceOfSatisfying(
            InvalidModelException.class,
            refused ->
                assertThat(refused.faults())
                    .extracting(f -> f.field())
                    .isEqualTo(List.of("toleranceNs")));
  }
}
