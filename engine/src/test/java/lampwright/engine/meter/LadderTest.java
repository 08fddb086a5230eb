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
  private static final class Solved {
    private final double[] volts;
    private final double nearAmps;

    Solved(Ladder ladder, double... amps) {
      volts = new double[amps.length];
      nearAmps = ladder.solve(amps, volts);
    }

    double at(int pixel) {
      return volts[pixel];
    }

    double[] volts() {
      return volts;
    }

    double nearAmps() {
      return nearAmps;
    }
  }

  private static Solved solve(Ladder ladder, double... amps) {
    return new Solved(ladder, amps);
  }

  // By hand: 0.6 A through 0.5 ohm leaves 4.7 V; 0.4 A and then 0.3 A through 0.2 ohm leave 4.62 V
  // and 4.56 V.
  @Test
  void runFedAtOneEndDropsStepByStep() {
    Solved solved = solve(Ladder.fedAtOneEnd(5, 0.5, 0.2), 0.2, 0.1, 0.3);

    assertThat(solved.volts()).containsExactly(new double[] {4.7, 4.62, 4.56}, within(1e-12));
    assertThat(solved.nearAmps()).isCloseTo(0.6, within(1e-12));
  }

  // By hand: three alike pixels are fed alike from both ends, 0.45 A from each. The first and last
  // have 5 - 0.45 x 0.2 = 4.91 V, the middle one takes 0.15 A from each side over 0.1 ohm: 4.895 V.
  @Test
  void runFedAtBothEndsSagsInTheMiddle() {
    Solved solved = solve(Ladder.fedAtBothEnds(5, 0.2, 0.1, 0.2), 0.3, 0.3, 0.3);

    assertThat(solved.volts()).containsExactly(new double[] {4.91, 4.895, 4.91}, within(1e-12));
    assertThat(solved.nearAmps()).isCloseTo(0.45, within(1e-12));
  }

  // n alike pixels on one end: the last has V - n I f - r I n (n - 1) / 2.
  @Test
  void longRunAgreesWithTheClosedForm() {
    double[] amps = new double[100];
    Arrays.fill(amps, 0.02);

    Solved solved = solve(Ladder.fedAtOneEnd(5, 0.1, 0.004), amps);

    assertThat(solved.at(99))
        .isCloseTo(5 - 100 * 0.02 * 0.1 - 0.004 * 0.02 * 100 * 99 / 2, within(1e-9));
  }

  @Test
  void onePixelHasOnlyItsFeeds() {
    assertThat(solve(Ladder.fedAtOneEnd(5, 1, 9), 0.5).at(0)).isEqualTo(4.5);
    // Two feeds of 1 ohm side by side are half an ohm.
    assertThat(solve(Ladder.fedAtBothEnds(5, 1, 9, 1), 0.5).at(0)).isEqualTo(4.75);
  }

  @Test
  void wireWithoutResistanceDropsNothing() {
    assertThat(solve(Ladder.fedAtBothEnds(5, 0, 0, 0), 1, 2).volts()).containsExactly(5, 5);
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
    Solved solved = solve(ladder, amps);

    int n = amps.length;
    for (int i = 0; i < n; i++) {
      double in = i == 0 ? (5 - solved.at(0)) / feed : (solved.at(i - 1) - solved.at(i)) / between;
      double end = bothEnds ? (solved.at(n - 1) - 5) / farFeed : 0;
      double out = i == n - 1 ? end : (solved.at(i) - solved.at(i + 1)) / between;
      assertThat(in - out).isCloseTo(amps[i], within(1e-9));
    }
    assertThat(solved.nearAmps()).isCloseTo((5 - solved.at(0)) / feed, within(1e-9));
  }

  @Test
  void pixelsAreNeeded() {
    assertThatThrownBy(() -> solve(Ladder.fedAtOneEnd(5, 1, 1)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("pixel currents: 0 for 0 voltages: must have as many, and at least one");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.1, Double.NaN, Double.POSITIVE_INFINITY})
  void currentOutOfRangeIsRefused(double amps) {
    assertThatThrownBy(() -> solve(Ladder.fedAtOneEnd(5, 1, 1), 0, amps))
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
}
