package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LadderTest {
  private static double[] volts(LadderVolts solved) {
    double[] volts = new double[solved.pixels()];
    for (int i = 0; i < volts.length; i++) {
      volts[i] = solved.at(i);
    }
    return volts;
  }

  // By hand: 0.6 A through 0.5 ohm leaves 4.7 V; 0.4 A and then 0.3 A through 0.2 ohm leave 4.62 V
  // and 4.56 V.
  @Test
  void runFedAtOneEndDropsStepByStep() {
    LadderVolts solved = Ladder.fedAtOneEnd(5, 0.5, 0.2).solve(new double[] {0.2, 0.1, 0.3});

    assertThat(volts(solved)).containsExactly(new double[] {4.7, 4.62, 4.56}, within(1e-12));
    assertThat(solved.nearAmps()).isCloseTo(0.6, within(1e-12));
    assertThat(solved.farAmps()).isZero();
  }

  // By hand: three alike pixels are fed alike from both ends, 0.45 A from each. The first and last
  // have 5 - 0.45 x 0.2 = 4.91 V, the middle one takes 0.15 A from each side over 0.1 ohm: 4.895 V.
  @Test
  void runFedAtBothEndsSagsInTheMiddle() {
    LadderVolts solved = Ladder.fedAtBothEnds(5, 0.2, 0.1, 0.2).solve(new double[] {0.3, 0.3, 0.3});

    assertThat(volts(solved)).containsExactly(new double[] {4.91, 4.895, 4.91}, within(1e-12));
    assertThat(solved.nearAmps()).isCloseTo(0.45, within(1e-12));
    assertThat(solved.farAmps()).isCloseTo(0.45, within(1e-12));
    assertThat(solved.weakest()).isEqualTo(1);
  }

  // n alike pixels on one end: the last has V - n I f - r I n (n - 1) / 2.
  @Test
  void longRunAgreesWithTheClosedForm() {
    double[] amps = new double[100];
    Arrays.fill(amps, 0.02);

    LadderVolts solved = Ladder.fedAtOneEnd(5, 0.1, 0.004).solve(amps);

    assertThat(solved.at(99))
        .isCloseTo(5 - 100 * 0.02 * 0.1 - 0.004 * 0.02 * 100 * 99 / 2, within(1e-9));
    assertThat(solved.weakest()).isEqualTo(99);
  }

  @Test
  void firstPixelBelowItsNeedIsFound() {
    LadderVolts solved = Ladder.fedAtOneEnd(5, 0.5, 0.2).solve(new double[] {0.2, 0.1, 0.3});

    assertThat(solved.firstBelow(4.65)).hasValue(1);
    assertThat(solved.firstBelow(4.5)).isEmpty();
    assertThat(solved.firstBelow(4.8)).hasValue(0);
  }

  @Test
  void onePixelHasOnlyItsFeeds() {
    assertThat(Ladder.fedAtOneEnd(5, 1, 9).solve(new double[] {0.5}).at(0)).isEqualTo(4.5);
    // Two feeds of 1 ohm side by side are half an ohm.
    assertThat(Ladder.fedAtBothEnds(5, 1, 9, 1).solve(new double[] {0.5}).at(0)).isEqualTo(4.75);
  }

  @Test
  void wireWithoutResistanceDropsNothing() {
    assertThat(volts(Ladder.fedAtBothEnds(5, 0, 0, 0).solve(new double[] {1, 2})))
        .containsExactly(5, 5);
  }

  @Provide
  Arbitrary<double[]> currents() {
    return Arbitraries.doubles()
        .between(0, 0.1)
        .ofScale(6)
        .array(double[].class)
        .ofMinSize(1)
        .ofMaxSize(60);
  }

  /** Kirchhoff's laws at every pixel and round every mesh, from voltages and resistances alone. */
  @Property(tries = 500, seed = "71")
  void voltagesKeepKirchhoffsLaws(
      @ForAll("currents") double[] amps,
      @ForAll @Scale(4) @DoubleRange(min = 0.001, max = 2) double feed,
      @ForAll @Scale(4) @DoubleRange(min = 0.001, max = 1) double between,
      @ForAll @Scale(4) @DoubleRange(min = 0.001, max = 2) double farFeed,
      @ForAll boolean bothEnds) {
    Ladder ladder =
        bothEnds
            ? Ladder.fedAtBothEnds(5, feed, between, farFeed)
            : Ladder.fedAtOneEnd(5, feed, between);
    LadderVolts solved = ladder.solve(amps);

    int n = amps.length;
    for (int i = 0; i < n; i++) {
      double in = i == 0 ? (5 - solved.at(0)) / feed : (solved.at(i - 1) - solved.at(i)) / between;
      double end = bothEnds ? (solved.at(n - 1) - 5) / farFeed : 0;
      double out = i == n - 1 ? end : (solved.at(i) - solved.at(i + 1)) / between;
      assertThat(in - out).isCloseTo(amps[i], within(1e-9));
    }
    assertThat(solved.nearAmps() + solved.farAmps())
        .isCloseTo(Arrays.stream(amps).sum(), within(1e-9));
  }

  @Test
  void pixelsAreNeeded() {
    assertThatThrownBy(() -> Ladder.fedAtOneEnd(5, 1, 1).solve(new double[0]))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("pixel currents: none: needs one pixel at least");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.1, Double.NaN, Double.POSITIVE_INFINITY})
  void currentOutOfRangeIsRefused(double amps) {
    assertThatThrownBy(() -> Ladder.fedAtOneEnd(5, 1, 1).solve(new double[] {0, amps}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("pixel amps: ");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.1, Double.NaN, Double.POSITIVE_INFINITY})
  void resistanceOutOfRangeIsRefused(double ohms) {
    assertThatThrownBy(() -> Ladder.fedAtOneEnd(5, ohms, 1)).hasMessageStartingWith("feed ohms: ");
    assertThatThrownBy(() -> Ladder.fedAtOneEnd(5, 1, ohms))
        .hasMessageStartingWith("ohms between pixels: ");
    assertThatThrownBy(() -> Ladder.fedAtBothEnds(5, 1, 1, ohms))
        .hasMessageStartingWith("far feed ohms: ");
  }

  // By hand: AWG 24 has 0.0842 ohm/m (IEC 60028, ASTM B258); 2 m of cable are 4 m of wire, so that
  // 1 A drops 0.337 V.
  @Test
  void bothConductorsDrop() {
    WireRun run = new WireRun(Wire.ofGauge(24), 2, 0, false);

    assertThat(run.ladder(5).solve(new double[] {1}).at(0)).isCloseTo(4.663, within(0.0005));
  }

  @Property(tries = 300, seed = "72")
  void neededCrossSectionJustDoes(
      @ForAll("currents") double[] amps,
      @ForAll @DoubleRange(min = 0.1, max = 3) double feed,
      @ForAll @DoubleRange(min = 0.01, max = 0.1) double between,
      @ForAll boolean bothEnds) {
    amps[0] += 0.05;
    double needed =
        new WireRun(Wire.ofGauge(24), feed, between, bothEnds)
            .neededSquareMillimetres(5, amps, 4.95)
            .orElseThrow();
    LadderVolts solved =
        new WireRun(new Wire(needed), feed, between, bothEnds).ladder(5).solve(amps);

    assertThat(solved.at(solved.weakest())).isCloseTo(4.95, within(1e-9));
  }

  @Test
  void noWireHelpsASupplyBelowTheNeed() {
    WireRun run = new WireRun(Wire.ofGauge(24), 1, 0.1, false);

    assertThat(run.neededSquareMillimetres(3, new double[] {0.1}, 3.5)).isEmpty();
    assertThat(run.neededSquareMillimetres(3.5, new double[] {0.1}, 3.5)).isEmpty();
    assertThat(run.neededSquareMillimetres(3, new double[] {0}, 3.5)).isEmpty();
  }

  @Test
  void anyWireDoesWhereNothingDrops() {
    WireRun run = new WireRun(Wire.ofGauge(24), 0, 0, false);

    assertThat(run.neededSquareMillimetres(5, new double[] {0.1}, 5)).hasValue(0);
  }

  @Test
  void lengthsOutOfRangeAreRefused() {
    assertThatThrownBy(() -> new WireRun(new Wire(1), -1, 0, false))
        .hasMessage("feed metres: -1: needs 0 to 1000");
    assertThatThrownBy(() -> new WireRun(new Wire(1), 0, Double.NaN, false))
        .hasMessage("metres between pixels: NaN: needs 0 to 1000");
  }
}
