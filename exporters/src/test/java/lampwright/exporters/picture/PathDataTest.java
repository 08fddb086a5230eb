package lampwright.exporters.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Boxes of curves worked out by hand from their equations. */
class PathDataTest {
  private static final Offset<Double> NEAR = within(0.01);

  private static void hasBox(String path, double left, double top, double right, double bottom) {
    Bounds box = new PathData(path).bounds();
    assertThat(box.left()).as("left").isCloseTo(left, NEAR);
    assertThat(box.top()).as("top").isCloseTo(top, NEAR);
    assertThat(box.right()).as("right").isCloseTo(right, NEAR);
    assertThat(box.bottom()).as("bottom").isCloseTo(bottom, NEAR);
  }

  @Test
  void straightLines() {
    hasBox("M1,2 L4,6", 1, 2, 4, 6);
    hasBox("M1,2 H-3 V9 Z", -3, 2, 1, 9);
    hasBox("M1,2 L4,6 M7.5,-1.25 H8", 1, -1.25, 8, 6);
  }

  /** Its vertex is half as far from the chord as the control point. */
  @Test
  void quadraticCurve() {
    hasBox("M0,0 Q10,20 20,0", 0, 0, 20, 10);
  }

  /** With controls straight above the ends, 3/4 of their height at t = 1/2. */
  @Test
  void cubicCurve() {
    hasBox("M0,0 C0,4 4,4 4,0", 0, 0, 4, 3);
  }

  @Test
  void circleOfTwoArcs() {
    hasBox("M-5,1 A5,5 0 1 1 5,1 A5,5 0 1 1 -5,1 Z", -5, -4, 5, 6);
  }

  /** Of a radius 5 about 0,0, from 3 o'clock to 6 o'clock: a quarter, or the other three. */
  @Test
  void arcsOfBothSizesAndSenses() {
    hasBox("M5,0 A5,5 0 0 1 0,5", 0, 0, 5, 5);
    hasBox("M5,0 A5,5 0 1 0 0,5", -5, -5, 5, 5);
    // About 5,5.
    hasBox("M5,0 A5,5 0 0 0 0,5", 0, 0, 5, 5);
    hasBox("M5,0 A5,5 0 1 1 0,5", 0, 0, 10, 10);
  }

  /** An ellipse of 4 and 2 turned by 90 degrees is one of 2 and 4. */
  @Test
  void turnedEllipse() {
    hasBox("M0,-4 A4,2 90 1 1 0,4 A4,2 90 1 1 0,-4", -2, -4, 2, 4);
  }

  /** SVG 2, 9.5.1: radii that are too small to reach are grown, and of 0 give a line. */
  @Test
  void arcsThatDoNotReach() {
    hasBox("M0,0 A1,1 0 0 1 10,0", 0, -5, 10, 0);
    hasBox("M0,0 A0,3 0 0 1 10,4", 0, 0, 10, 4);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'' | path data, character 0: no lines",
        "L1,2 | path data, character 1: needs M first",
        "M1 | path data, character 2: needs a number",
        "M1,2 l3,4 | path data, character 6: l: needs M, L, H, V, C, Q, A or Z",
        "M1,2 3,4 | path data, character 6: 3: needs M, L, H, V, C, Q, A or Z",
        "M1,2 A1,1 0 2 1 5,5 | path data, character 13: needs 0 or 1",
        "M1.5.5 | path data, character 1: needs a number",
        "M1,NaN | path data, character 3: needs a number",
        "M1,1e9 | path data, character 5: e: needs M, L, H, V, C, Q, A or Z",
        "M1,2 L1234567,3 | path data, character 6: needs a number",
      })
  void refusesWhatIsNoPath(String text, String message) {
    assertThatIllegalArgumentException().isThrownBy(() -> new PathData(text)).withMessage(message);
  }
}
