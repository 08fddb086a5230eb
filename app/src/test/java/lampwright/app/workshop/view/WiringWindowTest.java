package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.stage.Stage;
import lampwright.app.workshop.edit.Projects;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** Lamps dragged along their chain by the mouse, in the real window. */
@ExtendWith(ApplicationExtension.class)
class WiringWindowTest {
  @TempDir static Path folder;

  private WorkshopWindow window;
  private Project before;

  @Start
  void start(Stage stage) throws IOException {
    window = TestWindow.open(stage, folder, Optional.empty());
  }

  // Of six pixels the lamp "left" has two, "right" the next two, and two are free.
  @BeforeEach
  void open(FxRobot robot) throws Exception {
    Chain chain = new Chain("bar", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 6);
    Rig rig =
        Rig.of(
            List.of(chain),
            List.of(),
            List.of(
                Lamp.ofPixels("left", new PixelRun("bar", 0, 2)),
                Lamp.ofPixels("right", new PixelRun("bar", 2, 2))));
    Cue cue =
        Cue.SHAPE
            .draft()
            .set(Cue.LENGTH_MS, java.math.BigDecimal.valueOf(4000))
            .set(Cue.PATTERN, Patterns.fresh("steady", new Look(Colour.WHITE, 1)))
            .make();
    Scene scene =
        Scene.TRACKS.with(
            Projects.emptyScene("scene-1", 4000), List.of(Track.of(List.of("left"), cue)));
    before = Project.of("", rig, scene);
    robot.interact(
        () -> {
          window.parts().bench().open(before);
          window.panels().show(WorkshopPanels.RIG);
        });
    TestWindow.await(() -> canvas(robot).getWidth() > 100);
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  private Canvas canvas(FxRobot robot) {
    Node wiring = robot.lookup("#wiring").query();
    return (Canvas) wiring.lookup("Canvas");
  }

  private Point2D pixel(FxRobot robot, int pixel) {
    return TestWindow.wiredPixel(robot, "bar", pixel);
  }

  private Project project() {
    return window.parts().bench().project();
  }

  /** Which lamp has each pixel: {@code LLRR--}. */
  private String order() {
    return project().rig().lamps().stream()
        .flatMap(
            lamp ->
                ((lampwright.engine.rig.Fitting.Pixels) lamp.fitting())
                    .runs().stream()
                        .flatMap(
                            run ->
                                java.util.stream.IntStream.range(run.from(), run.end())
                                    .mapToObj(i -> i + lamp.id())))
        .sorted()
        .collect(Collectors.joining(" "));
  }

  /** The bytes of the first frame, as a pattern of lit pixels. */
  private String lit() {
    FrameTable table = FrameTable.of(project().rig(), project().scenes().get(0));
    byte[] bytes = new byte[table.layout().bytes()];
    table.cursor().next(bytes);
    StringBuilder lit = new StringBuilder();
    for (int i = 0; i < bytes.length; i += 3) {
      lit.append(bytes[i] == 0 ? '-' : '*');
    }
    return lit.toString();
  }

  @Test
  void lampIsDraggedAlongItsChainAndTakesItsLightWithIt(FxRobot robot) {
    assertThat(lit()).isEqualTo("**----");
    robot.moveTo(pixel(robot, 0)).press(MouseButton.PRIMARY);
    robot.moveTo(pixel(robot, 1)).moveTo(pixel(robot, 2)).release(MouseButton.PRIMARY);
    assertThat(order()).isEqualTo("0right 1right 2left 3left");
    assertThat(lit()).isEqualTo("--**--");
    assertThat(window.parts().bench().undoNameProperty().get()).contains("Change wiring order");
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(project()).isEqualTo(before);
  }

  @Test
  void lampIsDraggedBackWithinOneGestureAndEscGivesItUp(FxRobot robot) {
    robot.moveTo(pixel(robot, 0)).press(MouseButton.PRIMARY);
    robot.moveTo(pixel(robot, 3));
    assertThat(project()).isNotEqualTo(before);
    robot.type(KeyCode.ESCAPE);
    robot.release(MouseButton.PRIMARY);
    assertThat(project()).isEqualTo(before);
    assertThat(window.parts().bench().undoNameProperty().get()).isEmpty();
  }

  @Test
  void pressWithoutADragAndADragFromAFreePixelMoveNothing(FxRobot robot) {
    robot.moveTo(pixel(robot, 0)).press(MouseButton.PRIMARY).release(MouseButton.PRIMARY);
    assertThat(project()).isEqualTo(before);
    robot.moveTo(pixel(robot, 5)).press(MouseButton.PRIMARY);
    robot.moveTo(pixel(robot, 4)).release(MouseButton.PRIMARY);
    assertThat(project()).isEqualTo(before);
    assertThat(window.parts().rig().markedProperty().get()).containsExactlyInAnyOrder(4, 5);
  }
}
