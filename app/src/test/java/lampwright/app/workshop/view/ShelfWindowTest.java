package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.stage.Stage;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.app.workshop.model.shelf.ShelfLight;
import lampwright.app.workshop.view.shelf.ShelfView;
import lampwright.engine.light.Colour;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The patterns shelf and the colour settings in the real window, by keyboard and mouse. */
@ExtendWith(ApplicationExtension.class)
class ShelfWindowTest {
  @TempDir static Path folder;

  private WorkshopWindow window;

  @Start
  void start(Stage stage) throws IOException {
    window = TestWindow.open(stage, folder, Optional.empty());
  }

  @BeforeEach
  void open(FxRobot robot) {
    WaitForAsyncUtils.waitForFxEvents();
    robot.interact(() -> window.parts().bench().open(Projects4Tests.small()));
    robot.interact(
        () ->
            window
                .parts()
                .bench()
                .select(
                    window
                        .parts()
                        .bench()
                        .selection()
                        .withScene("rest")
                        .withLamps(List.of("amber"))));
    WaitForAsyncUtils.waitForFxEvents();
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  private Scene scene(String id) {
    return window.parts().bench().project().scene(id).orElseThrow();
  }

  private Node focus() {
    return window.panels().node().getScene().getFocusOwner();
  }

  @Test
  void aPresetIsFoundPlacedAndUndoneByKeys(FxRobot robot) {
    robot.type(KeyCode.F4);
    assertThat(window.panels().shown()).isEqualTo(WorkshopPanels.SHELF);
    assertThat(focus().getId()).isEqualTo("shelf-search");
    robot.write("amber beacon");
    robot.type(KeyCode.DOWN);
    assertThat(focus().getAccessibleText()).contains("pattern");
    robot.type(KeyCode.RIGHT);
    assertThat(focus().getAccessibleText()).startsWith("Amber beacon 150, preset of the pattern");
    robot.type(KeyCode.ENTER);
    Cue placed = scene("rest").tracks().get(0).cues().get(0);
    assertThat(placed.pattern().kind()).isEqualTo("rotating-beacon");
    assertThat(scene("rest").tracks().get(0).lamps()).containsExactly("amber");
    robot.type(KeyCode.ESCAPE);
    assertThat(focus().getId()).isEqualTo("ribbons");
    assertThat(window.panels().shown()).isEqualTo(WorkshopPanels.CUE);
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(scene("rest").tracks()).isEmpty();
  }

  @Test
  void aPatternIsDraggedOntoARibbonAndShownBefore(FxRobot robot) {
    robot.type(KeyCode.F4);
    Node entry = robot.lookup("#shelf-0").query();
    RibbonLayout.Row row =
        window.parts().ribbons().layout().orElseThrow().row("amber").orElseThrow();
    Canvas rows =
        (Canvas)
            robot.lookup("#ribbons").query().lookupAll("Canvas").stream()
                .max(
                    java.util.Comparator.comparingDouble(
                        n -> ((Canvas) n).getWidth() * ((Canvas) n).getHeight()))
                .orElseThrow();
    double x = window.parts().ribbons().axis().x(200);
    Point2D to = rows.localToScreen(x, row.y() + row.height() / 2);
    Bounds from = entry.localToScreen(entry.getBoundsInLocal());
    robot.moveTo(new Point2D(from.getMinX() + 60, from.getCenterY()));
    robot.press(MouseButton.PRIMARY);
    robot.moveBy(8, -4).moveBy(8, -4);
    robot.moveTo(to).moveBy(1, 0);
    assertThat(robot.lookup(".drop-preview").query().isVisible()).isTrue();
    robot.release(MouseButton.PRIMARY);
    WaitForAsyncUtils.waitForFxEvents();
    Cue placed = scene("rest").tracks().get(0).cues().get(0);
    assertThat(placed.pattern().kind()).isEqualTo("steady");
    assertThat(placed.startMs().doubleValue()).isBetween(180.0, 220.0);
    assertThat(placed.endMs()).isEqualByComparingTo("500");
    assertThat(robot.lookup(".drop-preview").query().isVisible()).isFalse();
  }

  @Test
  void stripsAreRenderedAndMoveOnlyWhereTheyAreSeen(FxRobot robot) throws TimeoutException {
    // It is no part of the window before it is shown.
    assertThat(robot.lookup("#shelf").tryQuery()).isEmpty();
    robot.type(KeyCode.F4);
    ShelfView shelf = (ShelfView) robot.lookup("#shelf").query();
    assertThat(shelf.isMoving()).isTrue();
    robot.interact(() -> window.parts().shelf().motionProperty().set(false));
    assertThat(shelf.isMoving()).isFalse();
    robot.interact(() -> window.parts().shelf().motionProperty().set(true));
    assertThat(shelf.isMoving()).isTrue();
    TestWindow.await(() -> window.parts().shelf().lights().countProperty().get() > 60);
    ShelfLight light =
        window
            .parts()
            .shelf()
            .lights()
            .find(window.parts().shelf().entries().get(0).pattern())
            .orElseThrow();
    assertThat(light.stripes()).hasSize(ShelfLight.PIXELS);
    robot.interact(() -> window.panels().show(WorkshopPanels.RIG));
    assertThat(shelf.isMoving()).isFalse();
    assertThat(robot.lookup("#shelf").tryQuery()).isEmpty();
    robot.interact(() -> window.panels().show(WorkshopPanels.SHELF));
    assertThat(robot.lookup("#shelf").tryQuery()).contains(shelf);
    assertThat(shelf.isMoving()).isTrue();
  }

  @Test
  void aColourIsTakenFromThePaletteAndByTheEyedropper(FxRobot robot) {
    robot.interact(
        () -> {
          var bench = window.parts().bench();
          bench.select(bench.selection().withScene("work").withCues(List.of(new CueRef(0, 0))));
        });
    robot.interact(() -> window.panels().show(WorkshopPanels.CUE));
    robot.interact(() -> ((javafx.scene.control.Button) robot.lookup("#palette-1").query()).fire());
    Colour taken = scene("work").tracks().get(0).cues().get(0).pattern().look().colour();
    assertThat(taken).isInstanceOf(Colour.Signal.class);
    robot.interact(() -> window.parts().sheet().dropper().start(this::paint));
    RibbonLayout.Row row =
        window.parts().ribbons().layout().orElseThrow().row("roof").orElseThrow();
    Node rows =
        robot.lookup("#ribbons").query().lookupAll("Canvas").stream()
            .max(
                java.util.Comparator.comparingDouble(
                    n -> ((Canvas) n).getWidth() * ((Canvas) n).getHeight()))
            .orElseThrow();
    robot.clickOn(
        rows.localToScreen(window.parts().ribbons().axis().x(500), row.y() + row.height() / 2));
    assertThat(picked).contains(taken);
    assertThat(window.parts().sheet().dropper().isActive()).isFalse();
  }

  private Optional<Colour> picked = Optional.empty();

  private void paint(Colour colour) {
    picked = Optional.of(colour);
  }
}
