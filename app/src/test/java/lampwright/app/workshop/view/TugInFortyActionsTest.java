package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javafx.scene.canvas.Canvas;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.command.CommandLineProgram;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The harbour tug of docs/guide from nothing to its first export. */
@ExtendWith(ApplicationExtension.class)
class TugInFortyActionsTest {
  private static final int MOST_ACTIONS = 40;

  /** Keys of the export after the sheet: its window, its folder in the system's dialog, write. */
  private static final int EXPORT_ACTIONS = 3;

  @TempDir static Path folder;

  private WorkshopWindow window;
  private int actions;

  @Start
  void start(Stage stage) throws IOException {
    window = TestWindow.open(stage, folder, Optional.empty());
    window.showStart();
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  private void press(FxRobot robot, KeyCode... keys) {
    robot.push(keys);
    WaitForAsyncUtils.waitForFxEvents();
    actions++;
  }

  /** By Tab to a control, each press an action. */
  private void tabTo(FxRobot robot, String id) {
    for (int k = 0; k < MOST_ACTIONS && !id.equals(focus(robot)); k++) {
      press(robot, KeyCode.TAB);
    }
    assertThat(focus(robot)).isEqualTo(id);
  }

  private static String focus(FxRobot robot) {
    WaitForAsyncUtils.waitForFxEvents();
    return String.valueOf(
        robot.targetWindow().getScene().getFocusOwner() == null
            ? ""
            : robot.targetWindow().getScene().getFocusOwner().getId());
  }

  private void click(FxRobot robot, String id) {
    robot.clickOn(id);
    WaitForAsyncUtils.waitForFxEvents();
    actions++;
  }

  private void write(FxRobot robot, String text) {
    robot.write(text);
    WaitForAsyncUtils.waitForFxEvents();
    actions++;
  }

  /** Clicks the ribbon of a lamp at the cue that it has from 0. */
  private void clickRibbon(FxRobot robot, String lamp) {
    RibbonLayout.Row row = window.parts().ribbons().layout().orElseThrow().row(lamp).orElseThrow();
    Canvas rows =
        (Canvas)
            robot.lookup("#ribbons").query().lookupAll("Canvas").stream()
                .max(
                    Comparator.comparingDouble(
                        n -> ((Canvas) n).getWidth() * ((Canvas) n).getHeight()))
                .orElseThrow();
    double y = row.lanesY() + row.laneHeight() / 4 - window.parts().ribbons().top();
    robot.clickOn(rows.localToScreen(window.parts().ribbons().axis().x(1000), y));
    WaitForAsyncUtils.waitForFxEvents();
    actions++;
  }

  /** The steps of docs/guide, whose project and whose commands have the same bytes. */
  @Test
  void sameBytesAsTheProjectOfTheGuide(FxRobot robot) throws Exception {
    WaitForAsyncUtils.waitForFxEvents();
    robot.targetWindow(robot.listWindows().get(0));
    while (!"start-kind-launch".equals(focus(robot))) {
      press(robot, KeyCode.RIGHT);
    }
    tabTo(robot, "start-lamp-masthead");
    press(robot, KeyCode.TAB);
    press(robot, KeyCode.RIGHT);
    click(robot, "#start-lamp-towing-light");
    click(robot, "#start-name");
    press(robot, KeyCode.SHORTCUT, KeyCode.A);
    write(robot, "Harbour tug");
    press(robot, KeyCode.ENTER);
    assertThat(window.parts().bench().project().rig().lamps()).hasSize(12);

    TestWindow.await(() -> window.parts().ribbons().layout().isPresent());
    clickRibbon(robot, "cabin-window-fore");
    assertThat(window.parts().bench().selection().cues()).hasSize(1);
    press(robot, KeyCode.F4);
    write(robot, "candle");
    press(robot, KeyCode.DOWN);
    press(robot, KeyCode.RIGHT);
    press(robot, KeyCode.RIGHT);
    press(robot, KeyCode.SHIFT, KeyCode.ENTER);
    Project tug = window.parts().bench().project();
    assertThat(actions + EXPORT_ACTIONS).isLessThanOrEqualTo(MOST_ACTIONS);

    Project guide =
        ProjectReader.read(Path.of("..", "docs", "guide", "harbour-tug.lampwright.json"))
            .project()
            .orElseThrow();
    assertThat(tug).isEqualTo(guide);
    Path byWindow = folder.resolve("by-window");
    TestWindow.export(tug, List.of("bin", "c"), byWindow);
    Path byCommand = folder.resolve("by-command");
    int exported =
        CommandLineProgram.runOnSystemStreams(
            "export",
            Path.of("..", "docs", "guide", "harbour-tug.lampwright.json").toString(),
            "--to",
            byCommand.toString(),
            "--as",
            "bin,c");
    assertThat(exported).isZero();
    for (String name : List.of("under-way.bin", "under-way.c", "under-way.h")) {
      assertThat(Files.readAllBytes(byWindow.resolve(name)))
          .as(name)
          .isEqualTo(Files.readAllBytes(byCommand.resolve(name)));
    }
  }
}
