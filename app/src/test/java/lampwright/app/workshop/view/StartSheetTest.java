package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeoutException;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.image.Image;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.start.ModelRequest;
import lampwright.app.start.NewModel;
import lampwright.app.workshop.edit.Projects;
import lampwright.engine.document.ModelKind;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.rig.Controller;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The start sheet in the real window, as the program shows it without a file. */
@ExtendWith(ApplicationExtension.class)
class StartSheetTest {
  @TempDir static Path folder;

  private WorkshopWindow window;
  private Scene scene;

  @Start
  void start(Stage stage) throws IOException {
    window = TestWindow.open(stage, folder, Optional.empty());
    stage.setWidth(1100);
    stage.setHeight(700);
    window.showStart();
    scene = stage.getScene();
  }

  @BeforeEach
  void settle() {
    WaitForAsyncUtils.waitForFxEvents();
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  private Project project() {
    return window.parts().bench().project();
  }

  private boolean sheet() {
    return "start".equals(scene.getRoot().getId());
  }

  private static void focus(FxRobot robot, String id) {
    robot.interact(() -> robot.lookup(id).query().requestFocus());
  }

  @Test
  void escGivesAnEmptySheetWithItsRigAsBefore(FxRobot robot) {
    assertThat(sheet()).isTrue();
    robot.type(KeyCode.ESCAPE);
    assertThat(sheet()).isFalse();
    assertThat(robot.lookup("#workshop").tryQuery()).isPresent();
    assertThat(project()).isEqualTo(Projects.fresh());
    assertThat(robot.lookup("#wiring").tryQuery()).isPresent();
  }

  @Test
  void keysOfTheBenchDoNothingBehindTheSheet(FxRobot robot) {
    focus(robot, "#start-kind-car");
    robot.type(KeyCode.L).type(KeyCode.END);
    robot.push(KeyCode.SHORTCUT, KeyCode.L);
    assertThat(project()).isEqualTo(Projects.fresh());
    assertThat(window.parts().player().loopingProperty().get()).isTrue();
  }

  @Test
  void makesTheSelectedModelInOneStep(FxRobot robot) throws TimeoutException {
    focus(robot, "#start-kind-launch");
    robot.type(KeyCode.SPACE);
    robot.interact(
        () -> ((javafx.scene.control.CheckBox) robot.lookup("#start-lamp-cabin").query()).fire());
    focus(robot, "#start-controller-rp2040");
    robot.type(KeyCode.SPACE);
    focus(robot, "#start-name");
    robot.push(KeyCode.SHORTCUT, KeyCode.A).write("Harbour tug");
    TestWindow.await(() -> robot.lookup("level shifter needed").tryQuery().isPresent());
    robot.type(KeyCode.ENTER);
    assertThat(sheet()).isFalse();
    ModelRequest request =
        ModelRequest.usual(ModelKind.LAUNCH)
            .withController(Controller.find("rp2040").orElseThrow())
            .withCount("cabin", 0)
            .withName("Harbour tug");
    assertThat(project()).isEqualTo(NewModel.make(request).project());
    assertThat(window.parts().files().document().changed()).isTrue();
    assertThat(window.parts().bench().scene()).isPresent();
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(project()).isEqualTo(Projects.fresh());
    robot.push(KeyCode.SHORTCUT, KeyCode.SHIFT, KeyCode.Z);
    assertThat(project()).isEqualTo(NewModel.make(request).project());
  }

  @Test
  void enterMakesItFromACardAsWell(FxRobot robot) {
    focus(robot, "#start-kind-house");
    robot.type(KeyCode.SPACE).type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(sheet()).isFalse();
    assertThat(project().model()).contains(ModelKind.HOUSE);
  }

  @Test
  void saysWhatDoesNotFitAndDoesNotMakeIt(FxRobot robot) throws TimeoutException {
    focus(robot, "#start-controller-attiny85");
    robot.type(KeyCode.SPACE);
    for (String group : new String[] {"sill-strip", "side-markers", "cab-light"}) {
      robot.interact(
          () ->
              ((javafx.scene.control.CheckBox) robot.lookup("#start-lamp-" + group).query())
                  .fire());
    }
    focus(robot, "#start-count-sill-strip");
    robot.type(KeyCode.RIGHT);
    Labeled refusal = robot.lookup("#start-refusal").queryAs(Labeled.class);
    // 512 bytes: ATtiny85 datasheet.
    focus(robot, "#start-count-side-markers");
    robot
        .type(KeyCode.RIGHT)
        .type(KeyCode.RIGHT)
        .type(KeyCode.RIGHT)
        .type(KeyCode.RIGHT)
        .type(KeyCode.RIGHT);
    javafx.scene.control.Spinner<?> markers =
        robot.lookup("#start-count-side-markers").queryAs(javafx.scene.control.Spinner.class);
    assertThat(markers.getValue()).as("focus " + scene.getFocusOwner()).isEqualTo(6);
    TestWindow.await(() -> refusal.getText().contains("limit 512 bytes"));
    assertThat(robot.lookup("#start-make").query().isDisabled()).isTrue();
    assertThat(sheet()).isTrue();
  }

  @Test
  void nameFollowsTheKindUntilItIsTheBuilders(FxRobot robot) {
    TextField name = robot.lookup("#start-name").queryAs(TextField.class);
    focus(robot, "#start-kind-house");
    robot.type(KeyCode.SPACE);
    assertThat(name.getText()).isEqualTo("House 1");
    robot.interact(() -> name.setText("Mine"));
    focus(robot, "#start-kind-car");
    robot.type(KeyCode.SPACE);
    assertThat(name.getText()).isEqualTo("Mine");
  }

  @Test
  void samplesAreThereWithPicturesAndOpenAsNewProjects(FxRobot robot) throws TimeoutException {
    TestWindow.await(() -> robot.lookup("#start-sample-3").tryQuery().isPresent());
    robot.interact(
        () -> ((javafx.scene.control.Button) robot.lookup("#start-sample-1").query()).fire());
    assertThat(sheet()).isFalse();
    assertThat(project().name()).isEqualTo("Mountain rescue carrier");
    assertThat(window.parts().files().document().file()).isEmpty();
    assertThat(window.parts().files().document().changed()).isFalse();
  }

  @Test
  void recentFilesHavePicturesAndDates(FxRobot robot) throws IOException, TimeoutException {
    Path file = folder.resolve("tug.lampwright.json");
    ProjectFiles.save(NewModel.make(ModelRequest.usual(ModelKind.LAUNCH)).project(), file);
    robot.interact(() -> window.parts().files().open(file));
    TestWindow.await(() -> !window.parts().files().recents().list().isEmpty());
    robot.interact(window::showStart);
    TestWindow.await(
        () ->
            robot
                .lookup("#start-recent-0")
                .tryQueryAs(Labeled.class)
                .filter(card -> card.getText().startsWith("tug, today "))
                .isPresent());
    assertThat(colours(robot.lookup("#start-recent-0").query())).hasSizeGreaterThan(50);
    robot.interact(
        () -> ((javafx.scene.control.Button) robot.lookup("#start-recent-0").query()).fire());
    TestWindow.await(() -> window.parts().files().document().file().equals(Optional.of(file)));
    assertThat(sheet()).isFalse();
  }

  private static Set<Integer> colours(Node node) {
    Set<Integer> colours = new HashSet<>();
    Image image = WaitForAsyncUtils.waitForAsyncFx(10_000, () -> node.snapshot(null, null));
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        colours.add(image.getPixelReader().getArgb(x, y));
      }
    }
    return colours;
  }

  @Test
  void windowHasTheMarkAsItsIconInEverySize() {
    List<Image> icons = ((Stage) scene.getWindow()).getIcons();
    assertThat(icons).extracting(Image::getWidth).contains(16.0, 32.0, 48.0, 128.0, 256.0);
    for (Image icon : icons) {
      assertThat(icon.getWidth()).isEqualTo(icon.getHeight());
      int size = (int) icon.getWidth();
      Set<Integer> colours = new HashSet<>();
      for (int k = 0; k < size * size; k++) {
        colours.add(icon.getPixelReader().getArgb(k % size, k / size));
      }
      // Tile, glass and lines; at the corner nothing.
      assertThat(colours).as("size %s", size).hasSizeGreaterThan(3);
      assertThat(icon.getPixelReader().getArgb(0, 0) >>> 24).isLessThan(128);
      assertThat(icon.getPixelReader().getArgb(size / 2, size - 1) >>> 24).isGreaterThan(200);
    }
  }

  @Test
  void everyControlIsReachedByTabAndHasWords(FxRobot robot) {
    Node first = scene.getFocusOwner();
    assertThat(first.getId()).isEqualTo("start-kind-recovery-vehicle");
    boolean name = false;
    boolean make = false;
    for (int k = 0; k < 80; k++) {
      robot.type(KeyCode.TAB);
      Node owner = scene.getFocusOwner();
      name |= "start-name".equals(owner.getId());
      make |= "start-make".equals(owner.getId());
      if (owner instanceof Labeled labeled) {
        assertThat(labeled.getText()).isNotBlank();
      } else if (!(owner instanceof javafx.scene.control.ScrollPane)) {
        assertThat(owner.getAccessibleText()).as(owner.toString()).isNotBlank();
      }
    }
    assertThat(name).isTrue();
    assertThat(make).isTrue();
  }
}
