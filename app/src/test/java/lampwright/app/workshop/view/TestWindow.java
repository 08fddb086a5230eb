package lampwright.app.workshop.view;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import javafx.stage.Stage;
import lampwright.app.export.ExportPart;
import lampwright.app.export.ExportRun;
import lampwright.engine.document.Project;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.Progress;
import org.testfx.api.FxRobot;
import org.testfx.util.WaitForAsyncUtils;

/** The real window in a test, with a state folder of its own. */
public final class TestWindow {
  private static final String STATE = "lampwright.state";

  private TestWindow() {}

  /**
   * Opens it. On the screen's thread.
   *
   * @param folder of the test; the state folder is made in it
   */
  static WorkshopWindow open(Stage stage, Path folder, Optional<Path> file) throws IOException {
    System.setProperty(STATE, Files.createTempDirectory(folder, "state").toString());
    WorkshopWindow window = new WorkshopWindow(stage);
    window.show(file);
    return window;
  }

  static void close(WorkshopWindow window, FxRobot robot) {
    robot.interact(() -> window.parts().close());
    System.clearProperty(STATE);
  }

  /** Waits until something holds, so long at the most that no machine needs it. */
  public static void await(BooleanSupplier until) throws TimeoutException {
    WaitForAsyncUtils.waitFor(
        5,
        TimeUnit.MINUTES,
        () -> {
          WaitForAsyncUtils.waitForFxEvents();
          return until.getAsBoolean();
        });
    WaitForAsyncUtils.waitForFxEvents();
  }

  /** Exports all scenes of a project to a folder. */
  static void export(Project project, List<String> formats, Path to) throws Exception {
    ExportRun run = ExportRun.of(project, project.scenes(), formats, ExportOptions.DEFAULT, to);
    run.write(
        new ExportRun.Watcher() {
          @Override
          public Progress begins(ExportPart part) {
            return Progress.SILENT;
          }

          @Override
          public void ends() {}
        },
        written -> {});
  }
}
