package lampwright.app.workshop.view;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.stage.Stage;
import lampwright.app.export.ExportPart;
import lampwright.app.export.ExportRun;
import lampwright.app.workshop.view.rig.WiringView;
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
    WorkshopWindow window = make(stage, folder);
    window.show(file);
    return window;
  }

  /** Opens it as it is without a file: with the start sheet. */
  static WorkshopWindow openOnStart(Stage stage, Path folder) throws IOException {
    WorkshopWindow window = make(stage, folder);
    window.showOnStart();
    return window;
  }

  private static WorkshopWindow make(Stage stage, Path folder) throws IOException {
    System.setProperty(STATE, Files.createTempDirectory(folder, "state").toString());
    // The classes of one JVM share the stage, and some leave it small.
    stage.setWidth(1280);
    stage.setHeight(760);
    return new WorkshopWindow(stage);
  }

  /** Opens a copy: what is edited is backed up beside it, and others open the same file. */
  static WorkshopWindow openCopy(Stage stage, Path folder, Path of) throws IOException {
    Path file = Files.createTempDirectory(folder, "project").resolve("copy.lampwright.json");
    return open(stage, folder, Optional.of(Files.copy(of, file)));
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

  /** A pixel of a chain on the wiring of the window, which is scrolled into sight. */
  static Point2D wiredPixel(FxRobot robot, String chain, int number) {
    WaitForAsyncUtils.waitForFxEvents();
    robot.interact(() -> robot.lookup("#rig-sheet").query().getScene().getRoot().layout());
    WiringView wiring = robot.lookup("#wiring").queryAs(WiringView.class);
    ScrollPane sheet = robot.lookup("#rig-sheet").queryAs(ScrollPane.class);
    Point2D middle = wiring.middleOf(chain, number).orElseThrow();
    Node content = sheet.getContent();
    double room = sheet.getViewportBounds().getHeight();
    double y = content.sceneToLocal(wiring.localToScene(middle)).getY() - room / 2;
    double most = Math.max(1, content.getLayoutBounds().getHeight() - room);
    robot.interact(
        () -> {
          sheet.setVvalue(Math.max(0, Math.min(1, y / most)));
          sheet.layout();
        });
    WaitForAsyncUtils.waitForFxEvents();
    return wiring.localToScreen(middle);
  }
}
