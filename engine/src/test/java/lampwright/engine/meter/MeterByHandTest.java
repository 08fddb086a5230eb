package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import lampwright.engine.light.Chromaticity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Regions, wires and resistors that come out by hand. */
class MeterByHandTest {
  private static final XyRegion RECTANGLE =
      XyRegion.ofLines(
          List.of("x >= 0.2", "x <= 0.6", "y >= 0.1", "y <= 0.3"),
          List.of("left", "right", "below", "above"));

  // Beyond the corner (0.6, 0.3) both sides are equally near: the one overstepped more counts.
  @ParameterizedTest
  @CsvSource({
    "0.4, 0.22, 0.08, above",
    "0.4, 0.18, 0.08, below",
    "0.25, 0.2, 0.05, left",
    "0.55, 0.2, 0.05, right",
    "0.1, 0.2, -0.1, left",
    "0.7, 0.2, -0.1, right",
    "0.4, 0.05, -0.05, below",
    "0.4, 0.45, -0.15, above",
    "0.2, 0.2, 0, left",
    "0.65, 0.34, -0.06403124, right",
    "0.62, 0.36, -0.06324555, above"
  })
  void rectangleOfLines(double x, double y, double margin, String towards) {
    Chromaticity point = new Chromaticity(x, y);
    assertThat(RECTANGLE.margin(point)).isCloseTo(margin, within(1e-8));
    assertThat(RECTANGLE.towards(point)).isEqualTo(towards);
  }

  // A triangle under x + y = 0.5, and a trapezium left of x = 0.1 + 0.5 y: |0.2 - 0.15 - 0.1| over
  // the root of 1.25.
  @ParameterizedTest
  @CsvSource({"0.2, 0.2, 0.07071068", "0.3, 0.3, -0.07071068"})
  void obliqueLineOfSlope1(double x, double y, double margin) {
    XyRegion region =
        XyRegion.ofLines(
            List.of("x >= 0.1", "y <= 0.5 - x", "y >= 0.1"), List.of("left", "far", "below"));
    Chromaticity point = new Chromaticity(x, y);
    assertThat(region.margin(point)).isCloseTo(margin, within(1e-8));
    assertThat(region.towards(point)).isEqualTo("far");
  }

  @ParameterizedTest
  @CsvSource({"0.2, 0.3, 0.04472136", "0.3, 0.3, -0.04472136"})
  void obliqueLineWithAFactor(double x, double y, double margin) {
    XyRegion region =
        XyRegion.ofLines(
            List.of("x >= 0.1", "x <= 0.1 + 0.5 y", "y >= 0.2", "y <= 0.4"),
            List.of("left", "right", "below", "above"));
    Chromaticity point = new Chromaticity(x, y);
    assertThat(region.margin(point)).isCloseTo(margin, within(1e-8));
    assertThat(region.towards(point)).isEqualTo("right");
  }

  // An L of two bars, each 0.1 wide.
  @ParameterizedTest
  @CsvSource({
    "0.16, 0.4, 0.04, d",
    "0.14, 0.4, 0.04, f",
    "0.4, 0.16, 0.04, c",
    "0.4, 0.14, 0.04, a",
    "0.4, 0.3, -0.1, c",
    "0.26, 0.4, -0.06, d",
    "0.55, 0.15, -0.05, b",
    "0.15, 0.55, -0.05, e",
    "0.05, 0.3, -0.05, f",
    "0.3, 0.05, -0.05, a"
  })
  void regionThatIsNotConvex(double x, double y, double margin, String towards) {
    XyRegion region =
        XyRegion.ofCorners(
            List.of(
                List.of(0.1, 0.1),
                List.of(0.5, 0.1),
                List.of(0.5, 0.2),
                List.of(0.2, 0.2),
                List.of(0.2, 0.5),
                List.of(0.1, 0.5)),
            List.of("a", "b", "c", "d", "e", "f"));
    Chromaticity point = new Chromaticity(x, y);
    assertThat(region.margin(point)).isCloseTo(margin, within(1e-9));
    assertThat(region.towards(point)).isEqualTo(towards);
  }

  @Test
  void lineThatIsNoneIsRefused() {
    assertThatThrownBy(() -> XyRegion.ofLines(List.of("z <= 1"), List.of("?")))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("z <= 1: must be a line such as y <= 0.992 - x");
  }

  @Test
  void wiresWithoutResistanceShareTheCurrentEvenly() {
    double[] volts = new double[2];
    double near = Ladder.fedAtBothEnds(5, 0, 0, 0).solve(new double[] {0.4, 0.2}, volts);
    assertThat(near).isCloseTo(0.3, within(1e-15));
    assertThat(volts).containsExactly(5, 5);
  }

  @Test
  void wiresAreRefusedOutsideTheirRanges() {
    assertThatThrownBy(() -> Ladder.fedAtOneEnd(1001, 0, 0)).hasMessageContaining("supply volts");
    assertThatThrownBy(() -> Ladder.fedAtOneEnd(5, -1, 0)).hasMessageContaining("feed ohms");
    assertThatThrownBy(() -> Ladder.fedAtOneEnd(5, 0, -1)).hasMessageContaining("between pixels");
    assertThatThrownBy(() -> Ladder.fedAtBothEnds(5, 0, 0, -1))
        .hasMessageContaining("far feed ohms");
  }

  // 5 V at 25 mA are 200 ohms, of the E24 series, and 0.125 W: a rating of 0.25 W is just twice.
  @Test
  void resistorOfTheSeriesAndRatingOfTwiceItsHeatAreTakenAsTheyAre() {
    SeriesResistor resistor = SeriesResistor.of(7, 1, 2, 25).orElseThrow();
    assertThat(resistor.ohms()).isEqualTo(200);
    assertThat(resistor.watts()).isCloseTo(0.125, within(1e-12));
    assertThat(resistor.ratingWatts()).isEqualTo(OptionalDouble.of(0.25));
  }
}
