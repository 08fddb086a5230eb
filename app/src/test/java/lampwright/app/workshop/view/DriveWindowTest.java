package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.stage.Stage;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.model.situation.DriveModel;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/**
 * A recorded drive in the real window. Expected by hand from its rows: no pulse has ended at 0 ms,
 * so the signal is lost at frame 0, and that situation lingers for a second.
 */
@ExtendWith(ApplicationExtension.class)
class DriveWindowTest {
  @TempDir static Path folder;

  private WorkshopWindow window;

  @Start
  void start(Stage stage) throws IOException {
    Locale.setDefault(Locale.ROOT);
    window = TestWindow.openCopy(stage, folder, Projects4Tests.REACTING);
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  private DriveModel drive() {
    return window.parts().drive();
  }

  private String text(FxRobot robot, String label) {
    WaitForAsyncUtils.waitForFxEvents();
    return robot.lookup(label).queryAs(Label.class).getText();
  }

  private void open(FxRobot robot) throws Exception {
    robot.interact(
        () -> {
          window.panels().show(WorkshopPanels.DRIVE);
          drive().open(Projects4Tests.DRIVE);
        });
    TestWindow.await(() -> drive().runProperty().get().isPresent());
    // Until it has its place: what is clicked is looked up there.
    WaitForAsyncUtils.waitForFxEvents();
  }

  @Test
  void driveIsGoneThroughByKeysAndByMouse(FxRobot robot) throws Exception {
    open(robot);
    int frames = drive().runProperty().get().orElseThrow().frames();
    Node strip = robot.lookup("#drive-strip").query();
    robot.interact(strip::requestFocus);
    robot.type(KeyCode.HOME);
    assertThat(drive().frame()).hasValue(0);
    robot.type(KeyCode.RIGHT, KeyCode.RIGHT, KeyCode.RIGHT, KeyCode.LEFT);
    assertThat(drive().frame()).hasValue(2);
    assertThat(text(robot, "#drive-now")).startsWith("0.04\u00a0s");
    assertThat(strip.getAccessibleText()).contains("signal-lost");
    assertThat(window.parts().sheet().liveProperty().get()).isPresent();
    robot.push(KeyCode.SHIFT, KeyCode.RIGHT);
    assertThat(drive().frame()).hasValue(52);
    robot.type(KeyCode.END);
    assertThat(drive().frame()).hasValue(frames - 1);
    // The last tenth or so of the strip is time alone.
    Bounds place = strip.localToScreen(strip.getLayoutBounds());
    robot.clickOn(
        place.getMaxX() - place.getWidth() / 10, place.getMinY() + 10, MouseButton.PRIMARY);
    assertThat(drive().frame().orElseThrow()).isBetween(frames / 2, frames - 2);
  }

  @Test
  void driveIsPlayedPausedAndClosed(FxRobot robot) throws Exception {
    open(robot);
    robot.clickOn("#drive-play");
    TestWindow.await(() -> drive().frame().orElse(0) > 3);
    robot.clickOn("#drive-play");
    WaitForAsyncUtils.waitForFxEvents();
    int paused = drive().frame().orElseThrow();
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(drive().frame()).hasValue(paused);
    robot.clickOn("#drive-close");
    assertThat(drive().runProperty().get()).isEmpty();
    assertThat(drive().nameProperty().get()).isEmpty();
    assertThat(robot.lookup("#drive-play").query().isDisabled()).isTrue();
  }
}
