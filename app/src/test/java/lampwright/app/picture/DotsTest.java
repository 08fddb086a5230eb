package lampwright.app.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampShape;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.View;
import org.junit.jupiter.api.Test;

/**
 * Where pixels are drawn: a lamp in the middle of a drawing of 400 by 200 that begins at 100, 50.
 */
class DotsTest {
  private static final Dots.Frame FRAME = new Dots.Frame(100, 50, 400, 200);

  private static List<Dots.Dot> dots(int pixels, Optional<LampShape> shape, double turn) {
    Place place = new Place(View.SIDE, 0.5, 0.5, 0.2, shape, turn, OptionalDouble.empty());
    Lamp lamp =
        Lamp.PLACE.with(Lamp.ofPixels("l", new PixelRun("c", 0, pixels)), Optional.of(place));
    return Dots.of(List.of(lamp), i -> pixels, View.SIDE, FRAME);
  }

  /** Issue 13: more than two pixels were always drawn as a ring. */
  @Test
  void severalPixelsAreABarUnlessTheLampHasAnotherShape() {
    assertThat(dots(8, Optional.empty(), 0))
        .hasSize(8)
        .allSatisfy(dot -> assertThat(dot.y()).isEqualTo(150))
        .isSortedAccordingTo((a, b) -> Double.compare(a.x(), b.x()));
    assertThat(dots(8, Optional.of(LampShape.RING), 0))
        .extracting(dot -> Math.hypot(dot.x() - 300, dot.y() - 150))
        .allSatisfy(away -> assertThat(away).isCloseTo(ring(8), within(1e-9)));
  }

  // So far from the middle that eight discs touch each other and the lamp's edge, 40 away.
  private static double ring(int pixels) {
    double share = Math.sin(Math.PI / pixels);
    return 40 - 40 * share / (1 + share);
  }

  @Test
  void onePixelIsADotInTheMiddle() {
    assertThat(dots(1, Optional.empty(), 0)).containsExactly(new Dots.Dot(0, 0, 300, 150, 40));
  }

  @Test
  void gridHasRowsOfEqualLength() {
    List<Dots.Dot> grid = dots(9, Optional.of(LampShape.GRID), 0);
    assertThat(grid.stream().map(Dots.Dot::y).distinct()).hasSize(3);
    assertThat(grid.stream().map(dot -> Math.round(dot.x() * 1000)).distinct()).hasSize(3);
  }

  @Test
  void barIsTurnedClockwise() {
    assertThat(dots(4, Optional.empty(), 90))
        .allSatisfy(dot -> assertThat(dot.x()).isCloseTo(300, within(1e-9)))
        .isSortedAccordingTo((a, b) -> Double.compare(a.y(), b.y()));
  }

  @Test
  void beamIsThrownInItsDirection() {
    Dots.Dot beam = dots(1, Optional.of(LampShape.BEAM), 180).get(0);
    assertThat(beam.beam()).contains(new Dots.Beam(180, 30, 180));
  }

  @Test
  void screenOfTwiceTheScaleHasTheSameDrawingOfTwiceThePixels() {
    Dots.Dot beam = dots(1, Optional.of(LampShape.BEAM), 180).get(0);
    assertThat(beam.times(2))
        .isEqualTo(new Dots.Dot(0, 0, 600, 300, 80, Optional.of(new Dots.Beam(180, 30, 360))));
    assertThat(beam.times(1)).isEqualTo(beam);
  }
}
