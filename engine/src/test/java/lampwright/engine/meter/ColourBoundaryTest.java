package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Planck;
import lampwright.engine.light.SignalColour;
import lampwright.engine.light.Spectrum;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Corner points and lines are from memory of UN Regulations 48 and 65, those of green as published
 * in COLREG 1972.
 */
class ColourBoundaryTest {
  @ParameterizedTest
  @CsvSource({
    "AMBER, 0.545, 0.425",
    "AMBER, 0.560, 0.440",
    "AMBER, 0.609, 0.390",
    "AMBER, 0.597, 0.390",
    "RED, 0.645, 0.335",
    "RED, 0.665, 0.335",
    "RED, 0.735, 0.265",
    "RED, 0.721, 0.259",
    "WHITE, 0.310, 0.348",
    "WHITE, 0.453, 0.440",
    "WHITE, 0.500, 0.440",
    "WHITE, 0.500, 0.382",
    "WHITE, 0.443, 0.382",
    "WHITE, 0.310, 0.283",
    // COLREG 1972, annex I, section 7 (published)
    "GREEN, 0.028, 0.385",
    "GREEN, 0.009, 0.723",
    "GREEN, 0.300, 0.511",
    "GREEN, 0.203, 0.356"
  })
  void cornerIsInside(ColourBoundary boundary, double x, double y) {
    assertThat(boundary.contains(new Chromaticity(x, y))).isTrue();
    assertThat(boundary.margin(new Chromaticity(x, y))).isZero();
  }

  // 0.001 beyond each corner or side, in the direction named.
  @ParameterizedTest
  @CsvSource({
    "AMBER, 0.544, 0.4255, green",
    "AMBER, 0.552, 0.433, green",
    "AMBER, 0.603, 0.389, red",
    "AMBER, 0.570, 0.407, white",
    "RED, 0.644, 0.335, purple",
    "RED, 0.655, 0.336, yellow",
    "RED, 0.683, 0.296, purple",
    "WHITE, 0.309, 0.316, blue",
    "WHITE, 0.380, 0.394, green",
    "WHITE, 0.476, 0.441, green",
    "WHITE, 0.501, 0.410, yellow",
    "WHITE, 0.470, 0.381, red",
    "WHITE, 0.376, 0.331, purple",
    "GREEN, 0.018, 0.550, more saturated",
    "GREEN, 0.155, 0.6185, yellow",
    "GREEN, 0.2525, 0.433, white",
    "GREEN, 0.115, 0.3695, blue",
    // On the line y = 0.440 - 0.001, between the lines y = 0.940 - x and y = 0.138 + 0.580x.
    "SELECTIVE_YELLOW, 0.510, 0.439, white",
    "SELECTIVE_YELLOW, 0.480, 0.4590, white",
    "SELECTIVE_YELLOW, 0.528, 0.4435, red",
    "SELECTIVE_YELLOW, 0.500, 0.4930, more saturated",
    "SELECTIVE_YELLOW, 0.465, 0.5010, green"
  })
  void pointJustOutsideIsToldWithItsDirection(
      ColourBoundary boundary, double x, double y, String towards) {
    Chromaticity point = new Chromaticity(x, y);

    assertThat(boundary.contains(point)).isFalse();
    assertThat(boundary.margin(point)).isBetween(-0.0021, -0.0005);
    assertThat(boundary.towards(point)).isEqualTo(towards);
  }

  // White has a corner that points inwards: above it white, beside and below it not.
  @Test
  void whiteIsNotConvex() {
    assertThat(ColourBoundary.WHITE.contains(new Chromaticity(0.443, 0.383))).isTrue();
    assertThat(ColourBoundary.WHITE.contains(new Chromaticity(0.430, 0.374))).isTrue();
    assertThat(ColourBoundary.WHITE.contains(new Chromaticity(0.446, 0.381))).isFalse();
  }

  // By hand: (0.598, 0.393) lies 0.003 above the side y = 0.390 that runs from x = 0.597 to 0.609,
  // and (0.52, 0.41) lies 0.02 to the right of the side x = 0.500.
  @Test
  void marginIsTheDistanceToTheBorder() {
    assertThat(ColourBoundary.AMBER.margin(new Chromaticity(0.598, 0.393)))
        .isCloseTo(0.003, within(1e-9));
    assertThat(ColourBoundary.WHITE.margin(new Chromaticity(0.52, 0.41)))
        .isCloseTo(-0.02, within(1e-9));
  }

  @Property(tries = 2000, seed = "91")
  void selectiveYellowKeepsItsFiveLines(
      @ForAll @Scale(6) @DoubleRange(min = 0.42, max = 0.58) double x,
      @ForAll @Scale(6) @DoubleRange(min = 0.32, max = 0.41999) double y) {
    Chromaticity point = new Chromaticity(x, Math.min(y + 0.1, 1 - x));
    double v = point.y();
    double least =
        Math.min(
            Math.min(1.290 * x - 0.100 - v, v - 0.138 - 0.580 * x),
            Math.min(Math.min(v - 0.940 + x, 0.992 - x - v), v - 0.440));

    if (Math.abs(least) > 1e-6) {
      assertThat(ColourBoundary.SELECTIVE_YELLOW.contains(point)).isEqualTo(least > 0);
    }
  }

  @Property(tries = 2000, seed = "92")
  void blueKeepsItsThreeLines(
      @ForAll @Scale(6) @DoubleRange(min = 0.05, max = 0.3) double x,
      @ForAll @Scale(6) @DoubleRange(min = 0.005, max = 0.3) double y) {
    double least = Math.min(Math.min(0.065 + 0.805 * x - y, 0.400 - x - y), 0.133 + 0.6 * y - x);

    if (Math.abs(least) > 1e-6) {
      assertThat(ColourBoundary.BLUE.contains(new Chromaticity(x, y))).isEqualTo(least > 0);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "AMBER, AMBER",
    "RED, RED",
    "WHITE, WHITE",
    "BLUE, BLUE",
    "GREEN, GREEN",
    "SELECTIVE_YELLOW, SELECTIVE_YELLOW"
  })
  void signalColourLiesWellInside(SignalColour signal, ColourBoundary boundary) {
    assertThat(boundary.margin(signal.chromaticity())).isGreaterThan(0.005);
  }

  @Test
  void whiteHoldsTheWhitesOfLamps() {
    assertThat(ColourBoundary.WHITE.contains(Planck.chromaticity(3000))).isTrue();
    assertThat(ColourBoundary.WHITE.contains(Planck.chromaticity(6000))).isTrue();
    assertThat(ColourBoundary.WHITE.contains(Planck.chromaticity(1800))).isFalse();
    assertThat(ColourBoundary.WHITE.contains(Planck.chromaticity(12000))).isFalse();
  }

  // The chord between two corners stands for the spectral locus, and cuts off a little of it.
  @Property(tries = 100, seed = "93")
  void monochromaticAmberIsInsideButForTheChord(
      @ForAll @Scale(6) @DoubleRange(min = 589, max = 595) double nm) {
    assertThat(ColourBoundary.AMBER.margin(Spectrum.monochromatic(nm))).isGreaterThan(-0.0005);
  }

  @Test
  void functionsHaveTheirColours() {
    assertThat(ColourBoundary.ofFunction("direction-indicator"))
        .containsExactly(ColourBoundary.AMBER);
    assertThat(ColourBoundary.ofFunction("stop")).containsExactly(ColourBoundary.RED);
    assertThat(ColourBoundary.ofFunction("special-warning"))
        .contains(ColourBoundary.AMBER, ColourBoundary.BLUE);
    assertThat(ColourBoundary.ofFunction("other")).isEmpty();
  }

  // UN Regulations 6, 48 and 65 and SAE J845 as the ranges themselves name them.
  @ParameterizedTest
  @CsvSource({
    "DIRECTION_INDICATOR, 59.9, -1", "DIRECTION_INDICATOR, 60, 0", "DIRECTION_INDICATOR, 120, 0",
    "DIRECTION_INDICATOR, 120.1, 1", "SPECIAL_WARNING, 119, -1", "SPECIAL_WARNING, 240, 0",
    "SERVICE_WARNING, 60, 0", "SERVICE_WARNING, 241, 1", "EMERGENCY_STOP, 180, 0",
    "FARM_WARNING, 121, 1"
  })
  void rateIsComparedWithRealLamps(FlashRange range, double perMinute, int sign) {
    assertThat(range.compare(perMinute)).isEqualTo(sign);
  }
}
