package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.command.CommandLineProgram;
import lampwright.engine.document.Project;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** A harbour tug of twelve lamps from nothing to its first export, by keys alone. */
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

  @Test
  void sameBytesAsByTheCommandLine(FxRobot robot) throws Exception {
    WaitForAsyncUtils.waitForFxEvents();
    robot.targetWindow(robot.listWindows().get(0));
    while (!"start-kind-launch".equals(focus(robot))) {
      press(robot, KeyCode.RIGHT);
    }
    for (String group : List.of("anchor-light", "wheelhouse")) {
      tabTo(robot, "start-lamp-" + group);
      press(robot, KeyCode.SPACE);
    }
    tabTo(robot, "start-name");
    press(robot, KeyCode.SHORTCUT, KeyCode.A);
    robot.write("Harbour tug");
    actions++;
    press(robot, KeyCode.ENTER);
    Project tug = window.parts().bench().project();
    assertThat(tug.rig().lamps()).hasSize(12);
    assertThat(actions + EXPORT_ACTIONS).isLessThanOrEqualTo(MOST_ACTIONS);

    Path byHand = folder.resolve("by-hand");
    TestWindow.export(tug, List.of("bin", "c"), byHand);
    Path file = folder.resolve("tug.lampwright.json");
    Path byCommand = folder.resolve("by-command");
    int made =
        CommandLineProgram.runOnSystemStreams(
            "new",
            "launch",
            file.toString(),
            "--lamps",
            "anchor-light=1,wheelhouse=1",
            "--name",
            "Harbour tug");
    int exported =
        CommandLineProgram.runOnSystemStreams(
            "export", file.toString(), "--to", byCommand.toString(), "--as", "bin,c");
    assertThat(made).isZero();
    assertThat(exported).isZero();
    for (String name : List.of("under-way.bin", "under-way.c", "under-way.h")) {
      assertThat(Files.readAllBytes(byHand.resolve(name)))
          .as(name)
          .isEqualTo(Files.readAllBytes(byCommand.resolve(name)));
    }
  }
}
