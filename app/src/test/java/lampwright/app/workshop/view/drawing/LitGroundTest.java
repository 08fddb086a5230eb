package lampwright.app.workshop.view.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.image.Image;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.stage.Stage;
import lampwright.app.picture.DrawingInk;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.PlaceEdits;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.PixelExplainer;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.drawing.PaintingJudge;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.view.TestWindow;
import lampwright.app.workshop.view.Theme;
import lampwright.engine.rig.View;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** The lit drawing has the pixels of the screen, whatever its scale. */
@ExtendWith(ApplicationExtension.class)
class LitGroundTest {
  /** An RGBW lamp of two pixels, white, in the middle of the side view. */
  private final Bench bench =
      new Bench(PlaceEdits.put(Projects4Tests.small(), "roof", View.SIDE, 0.5, 0.5));

  private LightService lights;
  private PaintingJudge judge;
  private LitGround ground;

  @Start
  void show(Stage stage) {
    lights = new LightService(bench, Platform::runLater);
    Playhead playhead = new Playhead(bench);
    DrawingModel model =
        new DrawingModel(
            bench, lights, playhead, new DrawingSheet(), new PixelExplainer(bench, work -> {}));
    judge = new PaintingJudge(Platform::runLater);
    Player player =
        new Player(bench, lights, playhead, new ReadyAnswers(), judge.cautionProperty());
    Inks<DrawingInk> inks = new Inks<>(DrawingInk.class, () -> {});
    ground =
        new LitGround(model, player, judge, inks, new ProjectPictures(Optional::empty, () -> {}));
    Pane drawing = new Pane(inks, ground.node());
    drawing.getStyleClass().addAll("drawing", Theme.PALETTE);
    Scene scene = new Scene(drawing, 400, 300);
    Theme.dress(scene, true);
    stage.setScene(scene);
    stage.show();
  }

  @AfterEach
  void close() {
    ground.close();
    lights.close();
    judge.close();
  }

  private Image drawn(FxRobot robot, double scale) throws Exception {
    robot.interact(() -> ground.draw(301, 200, scale));
    Image image = ground.node().getImage();
    TestWindow.await(() -> lights.lightProperty().get().isPresent());
    robot.interact(ground::light);
    TestWindow.await(() -> brightest(image) > 0.9);
    return image;
  }

  private static double brightest(Image image) {
    double most = 0;
    int y = (int) image.getHeight() / 2;
    for (int x = 0; x < image.getWidth(); x++) {
      most = Math.max(most, image.getPixelReader().getColor(x, y).getBrightness());
    }
    return most;
  }

  @Test
  void itHasAsManyPixelsAsTheScreen(FxRobot robot) throws Exception {
    for (double scale : new double[] {1, 1.25, 1.5, 2}) {
      Image image = drawn(robot, scale);
      assertThat(image.getWidth()).isEqualTo(Math.rint(301 * scale));
      assertThat(image.getHeight()).isEqualTo(Math.rint(200 * scale));
      // One pixel of it is one pixel of the screen.
      assertThat(ground.node().getFitWidth() * scale).isEqualTo(image.getWidth());
      assertThat(ground.node().getFitHeight() * scale).isEqualTo(image.getHeight());
      // Places and hands are in units of the layout.
      assertThat(ground.frame().x() + ground.frame().width() / 2).isEqualTo(150.5);
      int corner = image.getPixelReader().getArgb((int) image.getWidth() - 1, 0);
      assertThat(corner).isEqualTo(image.getPixelReader().getArgb(0, 0));
    }
  }

  /** The light is where the lamp is, of its size: twice as many pixels at twice the scale. */
  @Test
  void lightGrowsWithTheScale(FxRobot robot) throws Exception {
    int once = litAcross(drawn(robot, 1));
    int twice = litAcross(drawn(robot, 2));
    assertThat(once).isPositive();
    assertThat((double) twice / once).isBetween(1.6, 2.4);
  }

  /** At each frame that is played. */
  @Test
  void lightLaysNothingOut(FxRobot robot) throws Exception {
    WritableImage image = (WritableImage) drawn(robot, 1);
    List<Boolean> asked = new ArrayList<>();
    robot.interact(
        () -> {
          ground
              .node()
              .getParent()
              .needsLayoutProperty()
              .addListener((of, old, now) -> asked.add(now));
          for (int x = 0; x < image.getWidth(); x++) {
            image.getPixelWriter().setColor(x, (int) image.getHeight() / 2, Color.BLACK);
          }
          ground.light();
        });
    TestWindow.await(() -> brightest(image) > 0.9);
    assertThat(asked).isEmpty();
  }

  private static int litAcross(Image image) {
    int first = -1;
    int last = -1;
    int y = (int) image.getHeight() / 2;
    for (int x = 0; x < image.getWidth(); x++) {
      if (image.getPixelReader().getColor(x, y).getBrightness() > 0.9) {
        first = first < 0 ? x : first;
        last = x;
      }
    }
    assertThat((first + last) / 2.0 / image.getWidth()).isBetween(0.49, 0.51);
    return last - first + 1;
  }
}
