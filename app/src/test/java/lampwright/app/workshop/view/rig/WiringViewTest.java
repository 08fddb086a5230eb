package lampwright.app.workshop.view.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import javafx.scene.Scene;
import javafx.scene.canvas.Canvas;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.app.workshop.model.rig.RigCommands;
import lampwright.app.workshop.model.rig.RigModel;
import lampwright.app.workshop.model.rig.RigPart;
import lampwright.app.workshop.model.rig.WiringLayout;
import lampwright.app.workshop.view.MouseHand;
import lampwright.engine.document.Project;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** What mouse and keys do on the wiring: lamp {@code left} on pixels 0-1, {@code right} on 4-5. */
@ExtendWith(ApplicationExtension.class)
class WiringViewTest {
  private static final String CHAIN = "c";

  private final ReadyAnswers dialogs = new ReadyAnswers();
  private final Bench bench = new Bench(project());
  private final RigModel model = new RigModel(bench, dialogs);
  private WiringView view;

  private static Project project() {
    return Project.of(
        "wired",
        Rig.of(
            List.of(
                new Chain("before", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 3),
                new Chain(CHAIN, BuiltInPixelTypes.find("ws2812b").orElseThrow(), 8)),
            List.of(DriverOutput.of("o")),
            List.of(
                Lamp.ofPixels("left", new PixelRun(CHAIN, 0, 2)),
                Lamp.ofPixels("right", new PixelRun(CHAIN, 4, 2)))));
  }

  @Start
  void show(Stage stage) {
    view = new WiringView(model, new RigCommands(model, dialogs));
    stage.setScene(new Scene(view, 600, 300));
    stage.show();
  }

  private Canvas canvas() {
    return (Canvas) view.lookup("Canvas");
  }

  private WiringLayout layout() {
    return view.layOut(canvas().getWidth());
  }

  private double x(int pixel) {
    WiringLayout.ChainBlock block = layout().chains().get(1);
    return block.x(pixel) + block.cell() / 2;
  }

  private double y(int pixel) {
    WiringLayout.ChainBlock block = layout().chains().get(1);
    return block.y(pixel) + block.cell() / 2;
  }

  private MouseHand hand() {
    return new MouseHand(canvas());
  }

  private void click(FxRobot robot, MouseHand hand, int pixel) {
    robot.interact(() -> hand.press(x(pixel), y(pixel)).release(x(pixel), y(pixel)));
  }

  private List<PixelRun> runs(String lamp) {
    return ((Fitting.Pixels) bench.project().rig().lamp(lamp).orElseThrow().fitting()).runs();
  }

  private void keys(FxRobot robot, KeyCode... keys) {
    robot.type(keys);
    WaitForAsyncUtils.waitForFxEvents();
  }

  @Test
  void pressMarksAPixelOfTheChainThatItIsOn(FxRobot robot) {
    click(robot, hand(), 2);
    assertThat(model.chosenProperty().get()).isEqualTo(new RigPart.OfChain(CHAIN));
    assertThat(model.markedProperty().get()).containsExactly(2);
    click(robot, hand().withShift(), 6);
    assertThat(model.markedProperty().get()).containsExactlyInAnyOrder(2, 3, 4, 5, 6);
    click(robot, hand().withShortcut(), 3);
    assertThat(model.markedProperty().get()).containsExactlyInAnyOrder(2, 4, 5, 6);
    click(robot, hand(), 7);
    assertThat(model.markedProperty().get()).containsExactly(7);
  }

  @Test
  void dragFromAFreePixelMarksAndMovesNothing(FxRobot robot) {
    Project before = bench.project();
    robot.interact(
        () -> hand().press(x(2), y(2)).drag(x(3), y(3)).drag(x(5), y(5)).release(x(5), y(5)));
    assertThat(model.markedProperty().get()).containsExactlyInAnyOrder(2, 3, 4, 5);
    assertThat(bench.project()).isEqualTo(before);
  }

  /** By hand: the two lamps and the two free pairs, the first of the four put after the third. */
  @Test
  void lampGoesWhereTheMouseLetsGoThoughNoDragWasToldThere(FxRobot robot) {
    Project before = bench.project();
    robot.interact(() -> hand().press(x(0), y(0)).drag(x(2), y(2)).release(x(4), y(4)));
    assertThat(runs("left")).containsExactly(new PixelRun(CHAIN, 4, 2));
    assertThat(runs("right")).containsExactly(new PixelRun(CHAIN, 2, 2));
    robot.interact(bench::undo);
    assertThat(bench.project()).as("one gesture is undone as one").isEqualTo(before);
  }

  @Test
  void lampThatIsOnlyClickedStays(FxRobot robot) {
    Project before = bench.project();
    click(robot, hand(), 4);
    assertThat(bench.project()).isSameAs(before);
    assertThat(bench.undoNameProperty().get()).isEmpty();
  }

  @Test
  void escapeTakesADragBackAndTheReleaseAfterItMovesNothing(FxRobot robot) {
    Project before = bench.project();
    MouseHand hand = hand();
    robot.interact(() -> hand.press(x(0), y(0)).drag(x(4), y(4)));
    assertThat(bench.project()).isNotEqualTo(before);
    keys(robot, KeyCode.ESCAPE);
    assertThat(bench.project()).isEqualTo(before);
    robot.interact(() -> hand.release(x(6), y(6)));
    assertThat(bench.project()).isEqualTo(before);
  }

  @Test
  void keysMarkPixelsAndMakeALampOfThem(FxRobot robot) {
    robot.interact(
        () -> {
          model.chosenProperty().set(new RigPart.OfChain(CHAIN));
          view.requestFocus();
        });
    keys(robot, KeyCode.RIGHT, KeyCode.RIGHT, KeyCode.SPACE);
    assertThat(model.markedProperty().get()).containsExactly(2);
    robot.press(KeyCode.SHIFT).type(KeyCode.RIGHT).release(KeyCode.SHIFT);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(model.markedProperty().get()).isEqualTo(Set.of(2, 3));
    keys(robot, KeyCode.ENTER);
    List<Lamp> lamps = bench.project().rig().lamps();
    assertThat(lamps).hasSize(3);
    assertThat(((Fitting.Pixels) lamps.get(2).fitting()).runs())
        .containsExactly(new PixelRun(CHAIN, 2, 2));
  }

  @Test
  void cursorStaysOnTheChain(FxRobot robot) {
    robot.interact(
        () -> {
          model.chosenProperty().set(new RigPart.OfChain(CHAIN));
          view.requestFocus();
        });
    keys(robot, KeyCode.LEFT, KeyCode.SPACE);
    assertThat(model.markedProperty().get()).containsExactly(0);
    keys(robot, KeyCode.DOWN, KeyCode.RIGHT, KeyCode.SPACE);
    assertThat(model.markedProperty().get()).containsExactlyInAnyOrder(0, 7);
  }

  @Test
  void altMovesTheLampUnderTheCursorAndTheCursorWithIt(FxRobot robot) {
    robot.interact(
        () -> {
          model.chosenProperty().set(new RigPart.OfChain(CHAIN));
          view.requestFocus();
        });
    robot.press(KeyCode.ALT).type(KeyCode.RIGHT).release(KeyCode.ALT);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(runs("left")).containsExactly(new PixelRun(CHAIN, 2, 2));
    assertThat(view.getAccessibleText()).startsWith("Chain c, pixel 2, left;");
  }

  @Test
  void pressOnAnOutputShowsItAndMarksNothing(FxRobot robot) {
    click(robot, hand(), 2);
    WiringLayout.OutputLine line = layout().outputs().get(0);
    robot.interact(() -> hand().press(80, line.y() + line.height() / 2));
    assertThat(model.chosenProperty().get()).isEqualTo(new RigPart.OfOutput("o"));
    assertThat(model.markedProperty().get()).isEmpty();
  }
}
