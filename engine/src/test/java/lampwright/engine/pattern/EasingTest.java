package lampwright.engine.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertThrows;

import lampwright.engine.check.InvalidModelException;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EasingTest {
  /**
   * CSS Easing Level 1, section 2.2.1: the curve has the points (x(s), y(s)) of the Bézier with
   * control points (0,0), (x1,y1), (x2,y2), (1,1). Any s therefore gives a point to check, without
   * solving for s.
   */
  @Property
  void cubicBezierPassesThroughThePointsOfItsDefinition(
      @ForAll @DoubleRange(min = 0, max = 1) double x1,
      @ForAll @DoubleRange(min = -2, max = 3) double y1,
      @ForAll @DoubleRange(min = 0, max = 1) double x2,
      @ForAll @DoubleRange(min = -2, max = 3) double y2,
      @ForAll @DoubleRange(min = 0.05, max = 0.95) double s) {
    double x = point(x1, x2, s);
    double slope = (point(x1, x2, s + 1e-6) - point(x1, x2, s - 1e-6)) / 2e-6;
    if (slope > 1e-3) {
      assertThat(new Easing.CubicBezier(x1, y1, x2, y2).ease(x))
          .isCloseTo(point(y1, y2, s), within(1e-9 / slope));
    }
  }

  // The Bernstein form, written out as in the specification.
  private static double point(double p1, double p2, double s) {
    return 3 * s * Math.pow(1 - s, 2) * p1 + 3 * s * s * (1 - s) * p2 + Math.pow(s, 3);
  }

  /** CSS Easing Level 1 names ease as cubic-bezier(0.25, 0.1, 0.25, 1); symmetric ease-in-out. */
  @Test
  void easeInOutIsSymmetric() {
    Easing easing = Easing.parse("cubic-bezier(0.42, 0, 0.58, 1)").orElseThrow();
    assertThat(easing.ease(0.5)).isCloseTo(0.5, within(1e-12));
    assertThat(easing.ease(0.2) + easing.ease(0.8)).isCloseTo(1, within(1e-12));
  }

  @Test
  void straightControlPointsGiveAStraightLine() {
    Easing easing = new Easing.CubicBezier(1.0 / 3, 1.0 / 3, 2.0 / 3, 2.0 / 3);
    assertThat(easing.ease(0.37)).isCloseTo(0.37, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(strings = {"linear", "smooth", "cubic-bezier(0.3, 2, 0.7, -1)"})
  void everyMoveStartsAt0AndEndsAt1(String text) {
    Easing easing = Easing.parse(text).orElseThrow();
    assertThat(easing.ease(0)).isZero();
    assertThat(easing.ease(1)).isEqualTo(1);
    assertThat(Easing.parse(easing.text())).contains(easing);
  }

  @Test
  void holdStaysAtTheLeftValue() {
    assertThat(Easing.parse("hold").orElseThrow().ease(0.999)).isZero();
  }

  @Test
  void smoothIsTheHermitePolynomial() {
    assertThat(new Easing.Smooth().ease(0.25)).isEqualTo(0.15625);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "Linear",
        "ease",
        "cubic-bezier()",
        "cubic-bezier(1.1, 0, 0, 1)",
        "cubic-bezier(0, 0, -0.1, 1)",
        "cubic-bezier(0, 11, 0, 1)",
        "cubic-bezier(0, NaN, 0, 1)",
        "cubic-bezier(0, 0, 0, 1) "
      })
  void anythingElseIsNoEasing(String text) {
    assertThat(Easing.parse(text)).isEmpty();
  }

  @Test
  void cubicBezierRefusesTimeOutside0To1() {
    assertThrows(InvalidModelException.class, () -> new Easing.CubicBezier(-0.01, 0, 1, 1));
  }
}
