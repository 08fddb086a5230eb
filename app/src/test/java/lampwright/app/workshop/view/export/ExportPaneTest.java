package lampwright.app.workshop.view.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.paint.Paint;
import javafx.stage.Stage;
import lampwright.app.workshop.Samples;
import lampwright.app.workshop.model.export.ExportChoice;
import lampwright.app.workshop.model.export.ExportModel;
import lampwright.app.workshop.model.export.ExportWishes;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.app.workshop.view.TestWindow;
import lampwright.app.workshop.view.Theme;
import lampwright.engine.work.LatestWorker;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

@ExtendWith(ApplicationExtension.class)
class ExportPaneTest {
  @TempDir static Path folder;
  private final LatestWorker worker =
      LatestWorker.named("exporter", Platform::runLater, LatestWorker.Ending.ASK);
  private ExportModel model;
  private Stage dialog;
  private Stage owner;

  @Start
  void show(Stage stage) {
    Locale.setDefault(Locale.ROOT);
    Scene scene = new Scene(new Pane(), 300, 200);
    Theme.dress(scene, false);
    stage.setScene(scene);
    stage.show();
    owner = stage;
    model =
        new ExportModel(
            Samples.named("bench-rgbw"),
            Optional.of("walk"),
            ExportWishes.FIRST.in(folder),
            new ReadyAnswers(),
            worker,
            Platform::runLater);
    dialog = ExportDialog.show(stage, model, scene.getStylesheets());
  }

  @AfterEach
  void end(FxRobot robot) {
    robot.interact(dialog::close);
    worker.close();
  }

  @Test
  void formatChosenByKeysIsPreviewedAndWritten(FxRobot robot) throws Exception {
    TestWindow.await(() -> model.previewProperty().get().complete());
    robot.interact(() -> robot.lookup("#export-c").query().requestFocus());
    // From C to the bare bytes; the space bar turns one off and the other on.
    robot.type(KeyCode.SPACE, KeyCode.TAB, KeyCode.SPACE);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(model.formats().stream().filter(ExportChoice::chosen).map(ExportChoice::key))
        .containsExactly("bin");
    TestWindow.await(() -> lines(robot).equals(List.of("walk.bin (new)")));
    robot.clickOn("#export-write");
    TestWindow.await(() -> model.stageProperty().get() instanceof ExportModel.Stage.Done);
    assertThat(folder.resolve("walk.bin")).hasSize(6400);
    assertThat(robot.lookup("#export-result").queryAs(Label.class).getText()).contains("walk.bin");
    TestWindow.await(() -> lines(robot).equals(List.of("walk.bin (replaces existing file)")));
  }

  private static List<String> lines(FxRobot robot) {
    return robot.lookup(".export-place").queryAllAs(Label.class).stream()
        .map(Label::getText)
        .toList();
  }

  /** A danger once had the colour of a caution. */
  @Test
  void findingsHaveTheColourOfTheirSeverity(FxRobot robot) throws Exception {
    robot.interact(
        () -> {
          dialog.close();
          model =
              new ExportModel(
                  Samples.troubled(),
                  Optional.of("wild"),
                  ExportWishes.FIRST.in(folder),
                  new ReadyAnswers(),
                  worker,
                  Platform::runLater);
          dialog = ExportDialog.show(owner, model, owner.getScene().getStylesheets());
        });
    TestWindow.await(() -> model.previewProperty().get().complete());
    // palette-day.css: danger, warning, ink
    assertThat(colours(robot, "danger")).containsOnly(Color.web("#a3211b"));
    assertThat(colours(robot, "caution")).containsOnly(Color.web("#8a4300"));
    assertThat(colours(robot, "note"))
        .isNotEmpty()
        .doesNotContain(Color.web("#a3211b"), Color.web("#8a4300"));
  }

  private static List<Paint> colours(FxRobot robot, String severity) {
    return robot.lookup(".export-" + severity).queryAllAs(Label.class).stream()
        .map(Label::getTextFill)
        .toList();
  }

  @Test
  void escapeClosesIt(FxRobot robot) {
    robot.type(KeyCode.ESCAPE);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(dialog.isShowing()).isFalse();
  }
}
