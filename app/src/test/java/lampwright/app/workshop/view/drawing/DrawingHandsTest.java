package lampwright.app.workshop.view.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import javafx.scene.Cursor;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import lampwright.app.picture.Dots;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.PixelExplainer;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.drawing.Sight;
import lampwright.app.workshop.view.MouseHand;
import lampwright.engine.document.Project;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/**
 * What mouse and keys do on the drawing, event by event. The drawing stands at (100, 50) and is 400
 * by 200 pixels, so that a hundredth of it is 4 pixels across and 2 down.
 */
class DrawingHandsTest {
  private static final Dots.Frame FRAME = new Dots.Frame(100, 50, 400, 200);

  private final Bench bench = new Bench(project());
  private final LightService lights = new LightService(bench, work -> {});
  private final DrawingModel model =
      new DrawingModel(
          bench,
          lights,
          new Playhead(bench),
          new DrawingSheet(),
          new PixelExplainer(bench, work -> {}));
  private final DrawingMouse mouse = new DrawingMouse(model, () -> FRAME);
  private final DrawingKeys keys = new DrawingKeys(model);

  /** Lamps {@code a} at the middle and {@code b} near the lower right; {@code c} has no place. */
  private static Project project() {
    return Project.of(
        "placed",
        Rig.of(
            List.of(new Chain("c", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 3)),
            List.of(),
            List.of(placed("a", 0, 0.5, 0.5), placed("b", 1, 0.8, 0.75), lamp("c", 2))),
        Projects.emptyScene("work", 1000));
  }

  private static Lamp lamp(String id, int pixel) {
    return Lamp.ofPixels(id, new PixelRun("c", pixel, 1));
  }

  private static Lamp placed(String id, int pixel, double x, double y) {
    return Lamp.PLACE.with(lamp(id, pixel), Optional.of(new Place(View.SIDE, x, y, 0.05)));
  }

  @AfterEach
  void close() {
    lights.close();
  }

  private Place place(String lamp) {
    return bench.project().rig().lamp(lamp).orElseThrow().placeIn(View.SIDE).orElseThrow();
  }

  private void press(double x, double y) {
    mouse.pressed(MouseHand.event(MouseEvent.MOUSE_PRESSED, x, y));
  }

  private void drag(double x, double y) {
    mouse.dragged(MouseHand.event(MouseEvent.MOUSE_DRAGGED, x, y));
  }

  private void release(double x, double y) {
    mouse.released(MouseHand.event(MouseEvent.MOUSE_RELEASED, x, y));
  }

  private KeyEvent key(KeyCode code, boolean shift, boolean alt) {
    KeyEvent event =
        new KeyEvent(KeyEvent.KEY_PRESSED, "", code.getName(), code, shift, false, alt, false);
    keys.pressed(event);
    return event;
  }

  private void key(KeyCode code) {
    key(code, false, false);
  }

  private static ScrollEvent wheel(double by, boolean shortcut, double x, double y) {
    boolean mac = System.getProperty("os.name", "").startsWith("Mac");
    return new ScrollEvent(
        ScrollEvent.SCROLL,
        x,
        y,
        x,
        y,
        false,
        shortcut && !mac,
        false,
        shortcut && mac,
        false,
        false,
        0,
        by,
        0,
        by,
        ScrollEvent.HorizontalTextScrollUnits.NONE,
        0,
        ScrollEvent.VerticalTextScrollUnits.NONE,
        0,
        0,
        null);
  }

  @Test
  void lampGoesWhereTheMouseLetsGoThoughNoDragWasToldThere() {
    Project before = bench.project();
    press(300, 150);
    drag(310, 150);
    release(340, 130);
    assertThat(place("a").x()).isCloseTo(0.6, within(1e-9));
    assertThat(place("a").y()).isCloseTo(0.4, within(1e-9));
    assertThat(place("b")).isEqualTo(new Place(View.SIDE, 0.8, 0.75, 0.05));
    bench.undo();
    assertThat(bench.project()).as("one drag is undone as one").isEqualTo(before);
  }

  @Test
  void twoDragsAreUndoneOneByOne() {
    press(300, 150);
    release(340, 150);
    Project once = bench.project();
    press(340, 150);
    release(380, 150);
    bench.undo();
    assertThat(bench.project()).isEqualTo(once);
  }

  @Test
  void clickChoosesAndMovesNothing() {
    Project before = bench.project();
    press(300, 150);
    release(301, 150);
    assertThat(bench.selection().lamps()).containsExactly("a");
    assertThat(bench.project()).isSameAs(before);
  }

  @Test
  void selectedLampsMoveTogetherAndShiftAddsToThem() {
    press(300, 150);
    release(300, 150);
    mouse.pressed(MouseHand.event(MouseEvent.MOUSE_PRESSED, 420, 200, true, false));
    assertThat(bench.selection().lamps()).containsExactly("a", "b");
    release(400, 200);
    assertThat(place("a").x()).isCloseTo(0.45, within(1e-9));
    assertThat(place("b").x()).isCloseTo(0.75, within(1e-9));
  }

  @Test
  void pressBesideTheLampsChoosesNoneAndMovesTheSight() {
    press(300, 150);
    release(300, 150);
    model.sightProperty().set(new Sight(2, 0.5, 0.5));
    press(200, 100);
    assertThat(bench.selection().lamps()).isEmpty();
    release(240, 80);
    assertThat(model.sightProperty().get()).isEqualTo(new Sight(2, 0.4, 0.6));
  }

  @Test
  void lampWithoutAPlaceIsPutWhereItIsClicked() {
    model.choose("c", false);
    MouseEvent over = MouseHand.event(MouseEvent.MOUSE_MOVED, 140, 70);
    assertThat(mouse.cursor(over)).isEqualTo(Cursor.CROSSHAIR);
    press(140, 70);
    assertThat(place("c").x()).isCloseTo(0.1, within(1e-9));
    assertThat(place("c").y()).isCloseTo(0.1, within(1e-9));
    assertThat(mouse.cursor(over)).isEqualTo(Cursor.HAND);
  }

  @Test
  void wheelLooksNearerAndWithTheShortcutKeySizesLamps() {
    mouse.scrolled(wheel(40, false, 300, 150), 600, 300);
    assertThat(model.sightProperty().get().zoom()).isGreaterThan(1);
    assertThat(place("a").size()).isEqualTo(0.05);
    model.choose("a", false);
    Sight before = model.sightProperty().get();
    mouse.scrolled(wheel(40, true, 300, 150), 600, 300);
    assertThat(place("a").size()).isCloseTo(0.055, within(1e-9));
    assertThat(place("b").size()).isEqualTo(0.05);
    assertThat(model.sightProperty().get()).isEqualTo(before);
    mouse.scrolled(wheel(-40, true, 300, 150), 600, 300);
    assertThat(place("a").size()).isCloseTo(0.05, within(1e-9));
  }

  @Test
  void altArrowsMoveTheSelectedLampByAHundredth() {
    model.choose("a", false);
    key(KeyCode.RIGHT, false, true);
    assertThat(place("a").x()).isCloseTo(0.51, within(1e-9));
    key(KeyCode.LEFT, false, true);
    key(KeyCode.LEFT, false, true);
    assertThat(place("a").x()).isCloseTo(0.49, within(1e-9));
    key(KeyCode.UP, false, true);
    assertThat(place("a").y()).isCloseTo(0.49, within(1e-9));
    key(KeyCode.DOWN, false, true);
    key(KeyCode.DOWN, false, true);
    assertThat(place("a").y()).isCloseTo(0.51, within(1e-9));
    key(KeyCode.PLUS, false, true);
    assertThat(place("a").size()).isCloseTo(0.055, within(1e-9));
    key(KeyCode.MINUS, false, true);
    assertThat(place("a").size()).isCloseTo(0.05, within(1e-9));
    assertThat(place("b")).isEqualTo(new Place(View.SIDE, 0.8, 0.75, 0.05));
  }

  @Test
  void arrowsGoFromLampToLampAndEnterPutsTheOneWithoutAPlace() {
    key(KeyCode.DOWN);
    assertThat(bench.selection().lamps()).containsExactly("a");
    key(KeyCode.RIGHT);
    assertThat(bench.selection().lamps()).containsExactly("b");
    key(KeyCode.RIGHT);
    assertThat(bench.selection().lamps()).containsExactly("c");
    key(KeyCode.ENTER);
    assertThat(place("c").x()).isEqualTo(0.5);
    assertThat(place("c").y()).isEqualTo(0.5);
    // Between the two, as its ribbon is.
    key(KeyCode.DOWN);
    assertThat(bench.selection().lamps()).containsExactly("b");
    key(KeyCode.UP);
    assertThat(bench.selection().lamps()).containsExactly("c");
    key(KeyCode.DELETE);
    assertThat(bench.project().rig().lamp("c").orElseThrow().place()).isEmpty();
    assertThat(place("b")).isEqualTo(new Place(View.SIDE, 0.8, 0.75, 0.05));
    assertThat(bench.project().rig().lamps()).hasSize(3);
  }

  @Test
  void keysLookNearerMoveTheSightAndShowTheWholeAgain() {
    key(KeyCode.PLUS);
    assertThat(model.sightProperty().get()).isEqualTo(new Sight(1.25, 0.5, 0.5));
    // A tenth of what is in sight.
    key(KeyCode.RIGHT, true, false);
    assertThat(model.sightProperty().get().x()).isCloseTo(0.58, within(1e-9));
    key(KeyCode.UP, true, false);
    assertThat(model.sightProperty().get().y()).isCloseTo(0.42, within(1e-9));
    key(KeyCode.DIGIT0);
    assertThat(model.sightProperty().get()).isEqualTo(Sight.WHOLE);
  }

  @Test
  void escapeTakesADragBack() {
    Project before = bench.project();
    press(300, 150);
    drag(340, 150);
    assertThat(bench.project()).isNotEqualTo(before);
    key(KeyCode.ESCAPE);
    assertThat(bench.project()).isEqualTo(before);
  }

  @Test
  void keysThatMeanNothingHereAreLeftToTheCommands() {
    assertThat(key(KeyCode.F2, false, false).isConsumed()).isFalse();
    assertThat(key(KeyCode.SPACE, false, false).isConsumed()).isFalse();
    assertThat(key(KeyCode.X, false, true).isConsumed()).isFalse();
    assertThat(key(KeyCode.DOWN, false, false).isConsumed()).isTrue();
    KeyEvent shortcut =
        new KeyEvent(KeyEvent.KEY_PRESSED, "", "Left", KeyCode.LEFT, false, true, false, true);
    keys.pressed(shortcut);
    assertThat(shortcut.isConsumed()).isFalse();
    assertThat(bench.selection().lamps()).containsExactly("a");
  }
}
