package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.paint.Color;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/**
 * Every stop of the Tab key is seen: the picture of what has the focus differs from that of the
 * stops before and after by marks of at least 3:1 (W3C WCAG 2.2, 2.4.13), in as many points as a
 * thin line along the shorter side has.
 */
@ExtendWith(ApplicationExtension.class)
class FocusPictureTest {
  private static final int MOST_STOPS = 150;
  private static final double LEAST_CONTRAST = 3;

  @TempDir static Path folder;

  private WorkshopWindow window;
  private Stage stage;

  private record Stop(Node node, Bounds bounds, WritableImage picture) {}

  @Start
  void start(Stage shown) throws IOException {
    Locale.setDefault(Locale.ROOT);
    stage = shown;
    window =
        TestWindow.open(
            stage, folder, Optional.of(Path.of("../samples/recovery-tractor.lampwright.json")));
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  @ParameterizedTest
  @CsvSource({"cue, false", "rig, true", "situations, false"})
  void everyStopIsSeen(String panel, boolean dark, FxRobot robot) throws Exception {
    TestWindow.await(
        () ->
            window.parts().packs().progressProperty().get() >= 1
                && !window.parts().problems().rows().isEmpty());
    robot.interact(
        () -> {
          if (dark) {
            window.commands().find("workshop.menu.dark").run().run();
          }
          window.panels().show(panel);
        });
    robot.type(KeyCode.DOWN, KeyCode.RIGHT);
    List<Stop> stops = walk(robot);
    assertThat(stops.size()).isGreaterThan(20);
    List<String> unseen = new ArrayList<>();
    for (int i = 1; i + 1 < stops.size(); i++) {
      Stop stop = stops.get(i);
      int marks =
          Math.min(
              marks(stop, stops.get(i - 1).picture()), marks(stop, stops.get(i + 1).picture()));
      double side = Math.min(stop.bounds().getWidth(), stop.bounds().getHeight());
      if (marks < Math.min(side, 20)) {
        unseen.add(stop.node() + ": " + marks + " points");
      }
    }
    assertThat(unseen).isEmpty();
  }

  private List<Stop> walk(FxRobot robot) {
    List<Stop> stops = new ArrayList<>();
    Node first = stage.getScene().getFocusOwner();
    for (int i = 0; i < MOST_STOPS; i++) {
      robot.interact(
          () -> {
            Node node = stage.getScene().getFocusOwner();
            stops.add(
                new Stop(
                    node,
                    node.localToScene(node.getLayoutBounds()),
                    stage.getScene().snapshot(null)));
          });
      robot.type(KeyCode.TAB);
      WaitForAsyncUtils.waitForFxEvents();
      if (stage.getScene().getFocusOwner() == first) {
        break;
      }
    }
    return stops;
  }

  private static int marks(Stop stop, WritableImage other) {
    PixelReader now = stop.picture().getPixelReader();
    PixelReader then = other.getPixelReader();
    int marks = 0;
    int left = (int) Math.max(0, stop.bounds().getMinX() - 2);
    int top = (int) Math.max(0, stop.bounds().getMinY() - 2);
    int right = (int) Math.min(other.getWidth(), stop.bounds().getMaxX() + 2);
    int bottom = (int) Math.min(other.getHeight(), stop.bounds().getMaxY() + 2);
    for (int y = top; y < bottom; y++) {
      for (int x = left; x < right; x++) {
        if (contrast(now.getColor(x, y), then.getColor(x, y)) >= LEAST_CONTRAST) {
          marks++;
        }
      }
    }
    return marks;
  }

  // W3C WCAG 2.2, contrast ratio.
  private static double contrast(Color one, Color other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(Color of) {
    return 0.2126 * linear(of.getRed())
        + 0.7152 * linear(of.getGreen())
        + 0.0722 * linear(of.getBlue());
  }

  private static double linear(double of) {
    return of <= 0.04045 ? of / 12.92 : Math.pow((of + 0.055) / 1.055, 2.4);
  }
}
