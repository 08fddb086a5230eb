package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import lampwright.exporters.picture.ColourRow;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Ink;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;

/** Each kind of mark on a canvas of 40 x 40; the points that it covers are reckoned by hand. */
@ExtendWith(ApplicationExtension.class)
class DisplayPainterTest {
  private enum TestInk implements Ink {
    LINE,
    BODY
  }

  private static WritableImage painted(FxRobot robot, Mark mark) {
    WritableImage image = new WritableImage(40, 40);
    robot.interact(
        () -> {
          Canvas canvas = new Canvas(40, 40);
          new DisplayPainter(ink -> ink == TestInk.LINE ? Color.RED : Color.BLUE)
              .paint(new DisplayList(40, 40, List.of(mark)), canvas.getGraphicsContext2D());
          canvas.snapshot(null, image);
        });
    return image;
  }

  private static void is(WritableImage image, int x, int y, Color colour) {
    assertThat(image.getPixelReader().getColor(x, y)).as(x + ", " + y).isEqualTo(colour);
  }

  private static final Optional<Ink> FILL = Optional.of(TestInk.BODY);
  private static final Optional<Stroke> STROKE = Optional.of(new Stroke(TestInk.LINE, 4));

  @Test
  void rectangleHasItsFillWithinItsStroke(FxRobot robot) {
    WritableImage image = painted(robot, new Mark.Rect(10, 12, 20, 16, FILL, STROKE));
    is(image, 20, 20, Color.BLUE);
    is(image, 9, 20, Color.RED);
    is(image, 11, 20, Color.RED);
    is(image, 7, 20, Color.WHITE);
    is(image, 20, 31, Color.WHITE);
  }

  @Test
  void ellipseReachesItsRadii(FxRobot robot) {
    WritableImage image = painted(robot, new Mark.Ellipse(20, 20, 16, 8, FILL, Optional.empty()));
    is(image, 6, 20, Color.BLUE);
    is(image, 20, 13, Color.BLUE);
    is(image, 20, 10, Color.WHITE);
    is(image, 6, 13, Color.WHITE);
  }

  @Test
  void openPathIsNotClosedAndAClosedOneIs(FxRobot robot) {
    List<Mark.Point> corners =
        List.of(new Mark.Point(5, 35), new Mark.Point(5, 5), new Mark.Point(35, 5));
    WritableImage open = painted(robot, new Mark.Path(corners, false, Optional.empty(), STROKE));
    is(open, 5, 20, Color.RED);
    is(open, 20, 20, Color.WHITE);
    is(painted(robot, new Mark.Path(corners, true, FILL, STROKE)), 20, 20, Color.RED);
  }

  @Test
  void lineAndCurvesAreAsWideAsTheirStrokeWhateverTheScale(FxRobot robot) {
    WritableImage line = painted(robot, new Mark.Line(0, 20, 40, 20, STROKE.get()));
    WritableImage curves =
        painted(robot, new Mark.Curves("M0 2H4", 0, 0, 10, Optional.empty(), STROKE));
    for (WritableImage image : List.of(line, curves)) {
      is(image, 20, 18, Color.RED);
      is(image, 20, 21, Color.RED);
      is(image, 20, 16, Color.WHITE);
      is(image, 20, 23, Color.WHITE);
    }
  }

  @Test
  void stripHasItsColoursSideBySide(FxRobot robot) {
    ColourRow row = new ColourRow(0xFFFF0000, 0xFF00FF00);
    WritableImage image = painted(robot, new Mark.Strip(10, 10, 20, 10, row));
    is(image, 12, 15, Color.RED);
    is(image, 28, 15, Color.LIME);
    is(image, 28, 25, Color.WHITE);
  }

  @Test
  void textIsSqueezedToItsMostAndALabelStaysWithinTheDrawing(FxRobot robot) {
    WritableImage text =
        painted(
            robot,
            new Mark.Text(
                0,
                20,
                "MMMMMMMMMMMM",
                14,
                true,
                Mark.Side.LEFT,
                Mark.Height.CENTRE,
                TestInk.BODY,
                OptionalDouble.of(20)));
    is(text, 25, 20, Color.WHITE);
    WritableImage label =
        painted(robot, new Mark.Label(39, 30, "2 s", 9, TestInk.LINE, TestInk.BODY));
    // The plate keeps 2 from the edge, and so begins well to the left of where it is asked for.
    is(label, 37, 28, Color.BLUE);
    is(label, 39, 28, Color.WHITE);
  }
}
