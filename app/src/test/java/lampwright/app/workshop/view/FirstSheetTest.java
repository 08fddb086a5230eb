package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.workshop.edit.Projects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** The window as it opens without a file: the start sheet, and the bench once that is left. */
@ExtendWith(ApplicationExtension.class)
class FirstSheetTest {
  private static final Path SAMPLE = Path.of("..", "samples", "bench-rgbw.lampwright.json");

  @TempDir Path folder;

  private WorkshopWindow window;
  private Scene scene;

  @Start
  void start(Stage stage) throws IOException {
    window = TestWindow.openOnStart(stage, folder);
    scene = stage.getScene();
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  private boolean sheet() {
    return "start".equals(scene.getRoot().getId());
  }

  @Test
  void benchComesInPlaceOfTheSheet(FxRobot robot) throws TimeoutException {
    assertThat(sheet()).isTrue();
    robot.type(KeyCode.ESCAPE);
    TestWindow.await(() -> !sheet());
    assertThat(robot.lookup("#workshop").tryQuery()).isPresent();
    assertThat(robot.lookup("#wiring").tryQuery()).isPresent();
    assertThat(window.parts().bench().project()).isEqualTo(Projects.fresh());
    // The tour, since the window was never open before.
    assertThat(robot.lookup("#tour").query().isVisible()).isTrue();
  }

  @Test
  void fileThatIsOpenedLeavesTheSheet(FxRobot robot) throws IOException, TimeoutException {
    Path file = Files.copy(SAMPLE, folder.resolve("copy.lampwright.json"));
    robot.interact(() -> window.parts().files().open(file));
    TestWindow.await(() -> !sheet());
    assertThat(window.parts().files().document().file()).isEqualTo(Optional.of(file));
    assertThat(window.panels().shown()).isEqualTo(WorkshopPanels.CUE);
  }

  @Test
  void windowIsClosedFromTheSheet(FxRobot robot) throws TimeoutException {
    assertThat(sheet()).isTrue();
    robot.interact(() -> window.parts().files().quit());
    TestWindow.await(() -> !window.isShowing());
    assertThat(sheet()).isTrue();
  }
}
