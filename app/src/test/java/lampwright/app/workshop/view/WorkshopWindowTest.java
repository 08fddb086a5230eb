package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.paint.Color;
import javafx.stage.Stage;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.PlaceEdits;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.LampSigns;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.app.workshop.view.drawing.DrawingView;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ProjectWriter;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.View;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The real window, by mouse and keyboard alone. */
@ExtendWith(ApplicationExtension.class)
class WorkshopWindowTest {
  /** The project that the first test builds, as someone would write it by hand. */
  private static final String BY_HAND =
      """
      {"lampwright": 1, "name": "",
       "rig": {
         "chains": [{"id": "roof", "pixelType": "ws2812b", "pixels": 8}],
         "lamps": [
           {"id": "lamp-1", "name": "Roof beacon", "function": "special-warning",
            "pixels": [{"chain": "roof", "from": 1, "count": 3}]},
           {"id": "lamp-2", "pixels": [{"chain": "roof", "from": 0}, {"chain": "roof", "from": 4, "count": 4}]}]},
       "scenes": [{"id": "scene-1", "lengthMs": 4000, "framesPerSecond": 50, "loop": true, "tracks": [
         {"lamps": ["lamp-1"], "cues": [{"startMs": 0, "lengthMs": 4000,
           "pattern": {"kind": "rotating-beacon", "colour": {"signal": "amber"}, "perMinute": 150}}]},
         {"lamps": ["lamp-2"], "cues": [{"startMs": 200, "lengthMs": 1000,
           "pattern": {"kind": "flash", "level": 0.5}},
           {"startMs": 2000, "lengthMs": 1000, "pattern": {"kind": "flash", "level": 0.5}}]}]}]}
      """;

  @TempDir static Path folder;

  private WorkshopWindow window;

  @Start
  void start(Stage stage) throws IOException {
    window = TestWindow.open(stage, folder, Optional.empty());
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

  private static void type(FxRobot robot, String field, String text) {
    // By the focus, since a form may have scrolled the field out of sight.
    robot.interact(() -> robot.lookup(field).query().requestFocus());
    robot.push(KeyCode.SHORTCUT, KeyCode.A).write(text).type(KeyCode.ENTER);
  }

  /** A point of the ribbons: a time, and a share of a lane's height in a lamp's row. */
  private Point2D at(FxRobot robot, String lamp, int lane, double ms, double share) {
    RibbonLayout.Row row = window.parts().ribbons().layout().orElseThrow().row(lamp).orElseThrow();
    Canvas rows =
        (Canvas)
            robot.lookup("#ribbons").query().lookupAll("Canvas").stream()
                .max(
                    java.util.Comparator.comparingDouble(
                        n -> ((Canvas) n).getWidth() * ((Canvas) n).getHeight()))
                .orElseThrow();
    double y = row.lanesY() + (lane + share) * row.laneHeight() - window.parts().ribbons().top();
    return rows.localToScreen(window.parts().ribbons().axis().x(ms), y);
  }

  /** A pixel of the first chain on the wiring, which is scrolled into sight. */
  private Point2D pixel(FxRobot robot, int number) {
    return TestWindow.wiredPixel(robot, project().rig().chains().get(0).id(), number);
  }

  @Test
  void projectIsBuiltFromEmptyToItsBytesByMouseAndKeyboard(FxRobot robot) throws Exception {
    Project empty = project();
    assertThat(empty).isEqualTo(Projects.fresh());

    // The rig: the chain's id, a lamp of three pixels, a lamp of the rest.
    robot.clickOn("#tab-rig");
    robot.clickOn(pixel(robot, 1));
    type(robot, "#field-chain-id", "roof");
    robot.clickOn(pixel(robot, 1));
    robot.press(KeyCode.SHIFT).clickOn(pixel(robot, 3)).release(KeyCode.SHIFT);
    robot.type(KeyCode.ENTER);
    type(robot, "#field-name", "Roof beacon");
    robot.interact(() -> robot.lookup("#rig-sheet").queryAs(ScrollPane.class).setVvalue(0));
    javafx.scene.control.ComboBox<?> function = robot.lookup("#field-function").queryComboBox();
    robot.clickOn(function);
    while (!window
        .parts()
        .bench()
        .lamp()
        .orElseThrow()
        .function()
        .key()
        .equals("special-warning")) {
      robot.type(KeyCode.DOWN);
      robot.type(KeyCode.ENTER);
      if (!window.parts().bench().lamp().orElseThrow().function().key().equals("special-warning")) {
        robot.clickOn(function);
      }
    }
    robot.clickOn(pixel(robot, 0));
    robot.press(KeyCode.SHORTCUT).clickOn(pixel(robot, 0)).release(KeyCode.SHORTCUT);
    robot.interact(() -> robot.lookup("#rig-makeLamp").queryButton().fire());
    assertThat(project().rig().lamps()).extracting(Lamp::id).containsExactly("lamp-1", "lamp-2");

    // A beacon over the whole scene for the first lamp, by the keys of the ribbons.
    robot.interact(() -> {});
    robot.clickOn(at(robot, "lamp-1", 0, 500, 0.5));
    robot.type(KeyCode.INSERT);
    choose(robot, "rotating-beacon");
    robot.clickOn("#tab-cue");
    type(robot, "#field-perMinute", "150");

    // A flash by double click, dragged to its place, stretched and dimmed, then copied.
    robot.moveTo(at(robot, "lamp-2", 0, 1000, 0.5));
    robot.doubleClickOn(MouseButton.PRIMARY);
    choose(robot, "flash");
    robot
        .drag(at(robot, "lamp-2", 0, 3997, 0.8), MouseButton.PRIMARY)
        .dropTo(at(robot, "lamp-2", 0, 1997, 0.8));
    robot
        .drag(at(robot, "lamp-2", 0, 1500, 0.8), MouseButton.PRIMARY)
        .dropTo(at(robot, "lamp-2", 0, 700, 0.8));
    type(robot, "#field-level", "50");
    robot.clickOn(at(robot, "lamp-2", 0, 700, 0.8));
    robot.push(KeyCode.SHORTCUT, KeyCode.C);
    robot.interact(() -> window.parts().playhead().go(100));
    robot.push(KeyCode.SHORTCUT, KeyCode.V);
    WaitForAsyncUtils.waitForFxEvents();

    Project expected =
        ProjectReader.read("hand", BY_HAND.getBytes(StandardCharsets.UTF_8))
            .project()
            .orElseThrow();
    assertThat(ProjectWriter.write(project())).isEqualTo(ProjectWriter.write(expected));
    assertThat(bytes(project(), "built")).isEqualTo(bytes(expected, "hand"));

    // All the way back, and forth again.
    Project full = project();
    int steps = 0;
    while (window.parts().bench().undoNameProperty().get().isPresent()) {
      robot.push(KeyCode.SHORTCUT, KeyCode.Z);
      WaitForAsyncUtils.waitForFxEvents();
      assertThat(++steps).isLessThan(60);
    }
    assertThat(project()).isEqualTo(empty);
    while (window.parts().bench().redoNameProperty().get().isPresent()) {
      robot.press(KeyCode.SHORTCUT).press(KeyCode.SHIFT).type(KeyCode.Z);
      robot.release(KeyCode.SHIFT).release(KeyCode.SHORTCUT);
      WaitForAsyncUtils.waitForFxEvents();
    }
    assertThat(project()).isEqualTo(full);
  }

  private static byte[] bytes(Project project, String name) throws Exception {
    Path to = folder.resolve(name);
    TestWindow.export(project, java.util.List.of("bin"), to);
    return Files.readAllBytes(to.resolve("scene-1.bin"));
  }

  private static void choose(FxRobot robot, String kind) {
    WaitForAsyncUtils.waitForFxEvents();
    robot.clickOn("#kind-" + kind);
    WaitForAsyncUtils.waitForFxEvents();
  }

  @Test
  void sampleIsOpenedLampsArePlacedAndViewsTurned(FxRobot robot) throws Exception {
    Path file = folder.resolve("tractor.lampwright.json");
    Files.copy(Path.of("../samples/recovery-tractor.lampwright.json"), file);
    robot.interact(() -> window.parts().files().open(file));
    TestWindow.await(() -> window.parts().files().document().file().isPresent());
    assertThat(project().name()).isEqualTo("Quayside recovery tractor");
    robot.push(KeyCode.SHORTCUT, KeyCode.DIGIT4);
    assertThat(window.parts().sheet().viewProperty().get()).isEqualTo(View.TOP);
    robot.clickOn("#view-rear");
    assertThat(window.parts().sheet().viewProperty().get()).isEqualTo(View.REAR);
    Lamp tail = project().rig().lamp("tail-left").orElseThrow();
    robot.clickOn("#drawing");
    robot.interact(() -> window.parts().drawing().choose("tail-left", false));
    robot.press(KeyCode.ALT).type(KeyCode.RIGHT).release(KeyCode.ALT);
    assertThat(
            project().rig().lamp("tail-left").flatMap(l -> l.placeIn(View.REAR)).orElseThrow().x())
        .isGreaterThan(tail.placeIn(View.REAR).orElseThrow().x());
    robot.push(KeyCode.SHORTCUT, KeyCode.S);
    TestWindow.await(() -> !window.parts().files().document().changed());
    assertThat(ProjectReader.read(file).project()).contains(project());
  }

  @Test
  void spacePlaysButNotWhereTextIsTyped(FxRobot robot) throws Exception {
    robot.clickOn("#ribbons");
    robot.type(KeyCode.SPACE);
    TestWindow.await(() -> window.parts().playhead().frame() > 3);
    robot.type(KeyCode.SPACE);
    assertThat(window.parts().player().playingProperty().get()).isFalse();
    int frame = window.parts().playhead().frame();
    robot.type(KeyCode.PERIOD);
    assertThat(window.parts().playhead().frame()).isEqualTo(frame + 1);
    robot.clickOn("#beat").write("90").type(KeyCode.SPACE);
    assertThat(window.parts().player().playingProperty().get()).isFalse();
    assertThat(
            window.parts().ribbons().snapping().beatMsProperty().get().orElseThrow().doubleValue())
        .isEqualTo(60000.0 / 90, org.assertj.core.api.Assertions.within(1e-6));
  }

  @Test
  void everyCommandAndPanelIsInTheWindow(FxRobot robot) {
    java.util.Map<String, javafx.scene.control.MenuItem> items = new java.util.TreeMap<>();
    javafx.scene.control.MenuBar bar =
        robot.lookup(".menu-bar").queryAs(javafx.scene.control.MenuBar.class);
    bar.getMenus().stream()
        .flatMap(menu -> menu.getItems().stream())
        .filter(item -> item.getId() != null)
        .forEach(item -> assertThat(items.put(item.getId(), item)).isNull());
    for (Command command : window.commands().all()) {
      var item = items.remove(WorkshopMenus.itemId(command));
      if (command.place() instanceof Command.InMenu) {
        assertThat(item.getText()).isEqualTo(command.words().getValue());
        assertThat(item.isDisable()).isEqualTo(!command.enabled().get());
      }
    }
    assertThat(items).isEmpty();
    java.util.Set<String> words = new java.util.TreeSet<>();
    for (Panel panel : window.panels().all()) {
      assertThat(panel.words().getValue()).isNotBlank();
      assertThat(words.add(panel.words().getValue())).isTrue();
      robot.clickOn("#" + Panels.tabId(panel.id()));
      if (panel.where() == Panel.Where.TAB) {
        assertThat(window.panels().shown()).isEqualTo(panel.id());
      }
    }
    assertThat(words).hasSize(window.panels().all().size());
    robot.interact(() -> window.panels().show(WorkshopPanels.CUE));
    assertThat(window.panels().shown()).isEqualTo(WorkshopPanels.CUE);
  }

  /** Issue 13: quitting while playing threw RejectedExecutionException. */
  @Test
  void quittingWhilePlayingThrowsNothing(FxRobot robot) throws Exception {
    robot.clickOn("#ribbons").type(KeyCode.SPACE);
    TestWindow.await(() -> window.parts().playhead().frame() > 3);
    robot.interact(() -> window.parts().files().quit());
    TestWindow.await(() -> !window.isShowing());
    assertThat(window.parts().player().playingProperty().get()).isFalse();
    // Whatever still comes in once the window is gone; interact() hands on what it throws.
    robot.interact(
        () -> {
          window.parts().playhead().go(window.parts().playhead().frame() + 1);
          window.parts().bench().open(Projects4Tests.small());
        });
  }

  @Test
  void wrongNumberSaysWhatIsAllowedAndChangesNothing(FxRobot robot) {
    robot.clickOn("#tab-rig");
    TextField limit = robot.lookup("#field-supplyLimitMilliamps").query();
    Project before = project();
    robot.clickOn(limit).push(KeyCode.SHORTCUT, KeyCode.A).write("0");
    assertThat(robot.lookup(".field-trouble").queryAllAs(Label.class))
        .anyMatch(
            l -> l.isVisible() && l.getText().equals("! must be between 1 and 1000000\u00a0mA"));
    assertThat(project()).isEqualTo(before);
    robot.type(KeyCode.TAB);
    assertThat(limit.getText()).isEqualTo("2000");
    // By the focus, since the form may have scrolled the field away.
    robot.interact(limit::requestFocus);
    robot.type(KeyCode.UP);
    assertThat(project().rig().supplyLimitMilliamps()).isEqualTo(2050);
  }

  /** Issue 13: keys of the ribbons and of other lists were done while a name was typed. */
  @Test
  void lettersThatAreTypedAreNoCommands(FxRobot robot) {
    robot.interact(() -> window.parts().bench().open(Projects4Tests.sample("recovery-tractor")));
    robot.interact(() -> window.parts().drawing().choose("beacon-left", false));
    robot.interact(() -> window.panels().show(WorkshopPanels.RIG));
    WaitForAsyncUtils.waitForFxEvents();
    Project before = project();
    TextField name = robot.lookup("#field-name").queryAs(TextField.class);
    robot.interact(name::requestFocus);
    robot.push(KeyCode.SHORTCUT, KeyCode.A).write("xslkhmnbiouglp ,.").type(KeyCode.ESCAPE);
    assertThat(project()).isEqualTo(before);
    assertThat(window.parts().sheet().signs()).isEqualTo(LampSigns.NONE);
    assertThat(window.parts().player().loopingProperty().get()).isTrue();
    assertThat(window.parts().player().playingProperty().get()).isFalse();
    assertThat(window.parts().playhead().range()).isEmpty();
    assertThat(window.parts().playhead().frame()).isZero();
  }

  @Test
  void cuePatternAndColourAreChangedOnTheSheet(FxRobot robot) throws Exception {
    robot.interact(() -> window.parts().bench().open(Projects4Tests.sample("recovery-tractor")));
    WaitForAsyncUtils.waitForFxEvents();
    robot.clickOn(at(robot, "beacon-left", 0, 1000, 0.8));
    robot.clickOn("#tab-cue");
    assertThat(window.parts().bench().cue().orElseThrow().pattern())
        .isInstanceOf(RotatingBeacon.class);
    javafx.scene.control.ComboBox<?> form = robot.lookup("#field-colour").queryComboBox();
    robot.clickOn(form).type(KeyCode.DOWN).type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(window.parts().bench().cue().orElseThrow().pattern().look().colour())
        .isInstanceOf(Colour.Drive.class);
    // By the focus, since a form may have scrolled the slider out of sight.
    robot.interact(() -> robot.lookup("#slider-drive-b").query().requestFocus());
    robot.type(KeyCode.RIGHT);
    assertThat(
            ((Colour.Drive) window.parts().bench().cue().orElseThrow().pattern().look().colour())
                .b())
        .isPositive();
    Bounds sheet = robot.lookup("#cue-settings").query().getLayoutBounds();
    assertThat(sheet.getHeight()).isPositive();
  }

  private static boolean dialog(FxRobot robot, String text) {
    return robot.lookup(".dialog-pane .label").queryAllAs(Label.class).stream()
        .anyMatch(l -> l.getText() != null && l.getText().contains(text));
  }

  @Test
  void damagedFileIsListedAndTheBenchStays(FxRobot robot) throws Exception {
    Path file = Files.writeString(folder.resolve("damaged.lampwright.json"), "{\"lampwright\": 1,");
    Project before = project();
    robot.interact(() -> window.parts().files().open(file));
    TestWindow.await(() -> dialog(robot, "The current project stays open."));
    assertThat(dialog(robot, "line 1")).isTrue();
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(robot.lookup(".dialog-pane").tryQuery()).isEmpty();
    assertThat(project()).isSameAs(before);
    assertThat(window.parts().files().document().file()).isEmpty();
  }

  @Test
  void fileThatChangesOutsideIsNoticedAndReloadedIfWanted(FxRobot robot) throws Exception {
    Path file = folder.resolve("outside.lampwright.json");
    String text = Files.readString(Path.of("../samples/recovery-tractor.lampwright.json"));
    Files.writeString(file, text);
    robot.interact(() -> window.parts().files().open(file));
    TestWindow.await(() -> window.parts().files().document().file().isPresent());
    Project before = project();
    Files.writeString(file, text.replace("Quayside recovery tractor", "Changed elsewhere"));
    TestWindow.await(() -> dialog(robot, "was changed on disk"));
    assertThat(project()).isEqualTo(before);
    robot.clickOn("Reload file");
    TestWindow.await(() -> project().name().equals("Changed elsewhere"));
    // The way back leads to what was on the bench.
    robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    assertThat(project()).isEqualTo(before);
  }

  /**
   * Two lamps that flash too fast and an output on the timer of an IDE's clock; the notes beside
   * them, of fuses, dropout and the receiver, don't count.
   */
  @Test
  void problemsAreCountedWithoutNotes(FxRobot robot) throws Exception {
    Path file = folder.resolve("counted.lampwright.json");
    Files.copy(Path.of("../samples/recovery-tractor.lampwright.json"), file);
    robot.interact(() -> window.parts().files().open(file));
    TestWindow.await(() -> window.parts().files().document().file().isPresent());
    TestWindow.await(() -> robot.lookup("3 problems, 4 notes").tryQuery().isPresent());
    assertThat(window.parts().problems().rows()).hasSizeGreaterThan(2);
  }

  private static void photo(Path file, String format) throws IOException {
    java.awt.image.BufferedImage photo =
        new java.awt.image.BufferedImage(80, 40, java.awt.image.BufferedImage.TYPE_INT_RGB);
    for (int x = 0; x < 80; x++) {
      for (int y = 0; y < 40; y++) {
        photo.setRGB(x, y, 0x00FF00);
      }
    }
    javax.imageio.ImageIO.write(photo, format, file.toFile());
  }

  /** The colours of the drawing along its middle, in the middle half of the pane. */
  private static List<Color> alongTheMiddle(FxRobot robot) {
    Node drawing = robot.lookup("#drawing").query();
    javafx.scene.image.WritableImage[] shot = new javafx.scene.image.WritableImage[1];
    robot.interact(() -> shot[0] = drawing.snapshot(null, null));
    int quarter = (int) shot[0].getWidth() / 4;
    int middle = (int) shot[0].getHeight() / 2;
    return java.util.stream.IntStream.range(quarter, 3 * quarter)
        .mapToObj(x -> shot[0].getPixelReader().getColor(x, middle))
        .toList();
  }

  private static boolean green(Color colour) {
    return colour.getGreen() > 0.97 && colour.getRed() < 0.03 && colour.getBlue() < 0.03;
  }

  /** PNG and JPEG; the light of a lamp is upon the photograph, and a lost one is named. */
  @Test
  void pictureBesideTheProjectIsDrawnUnderTheLamps(FxRobot robot) throws Exception {
    Path file = folder.resolve("pictured.lampwright.json");
    Project lit = PlaceEdits.put(Projects4Tests.small(), "roof", View.SIDE, 0.5, 0.5);
    Files.writeString(file, ProjectWriter.write(lit));
    photo(folder.resolve("model.png"), "png");
    photo(folder.resolve("model.jpg"), "jpg");
    robot.interact(() -> window.parts().files().open(file));
    TestWindow.await(() -> window.parts().files().document().file().isPresent());
    robot.interact(() -> window.parts().sheet().nightProperty().set(false));
    for (String name : List.of("model.png", "model.jpg")) {
      robot.interact(() -> window.parts().drawing().picture(Optional.of(name)));
      TestWindow.await(
          () -> {
            List<Color> seen = alongTheMiddle(robot);
            // The photograph at both ends, the white light of the lamp between.
            return green(seen.get(0))
                && green(seen.get(seen.size() - 1))
                && seen.stream().anyMatch(colour -> colour.getRed() > 0.5);
          });
    }
    assertThat(project().pictures()).hasSize(1);
    robot.interact(() -> window.parts().drawing().picture(Optional.of("lost.png")));
    Node drawing = robot.lookup("#drawing").query();
    TestWindow.await(() -> drawing.getAccessibleText().endsWith("picture not found: lost.png"));
    assertThat(alongTheMiddle(robot)).noneMatch(WorkshopWindowTest::green);
  }

  private static Project withUnplaced(int lamps) {
    return lampwright.engine.document.Project.of(
        "unplaced",
        lampwright.engine.rig.Rig.of(
            java.util.List.of(
                new lampwright.engine.rig.Chain(
                    "c",
                    lampwright.engine.rig.BuiltInPixelTypes.find("ws2812b").orElseThrow(),
                    lamps)),
            java.util.List.of(),
            java.util.stream.IntStream.range(0, lamps)
                .mapToObj(
                    i ->
                        Lamp.NAME.with(
                            Lamp.ofPixels(
                                "lamp-" + i, new lampwright.engine.rig.PixelRun("c", i, 1)),
                            "Work lamp of the loading bed, number " + i))
                .toList()),
        Projects.emptyScene("work", 1000));
  }

  private java.util.List<Bounds> geometry(FxRobot robot, int lamps) {
    robot.interact(() -> window.parts().bench().open(withUnplaced(lamps)));
    WaitForAsyncUtils.waitForFxEvents();
    return java.util.stream.Stream.of("#ribbons", "#drawing", "#play")
        .<Node>map(id -> robot.lookup(id).query())
        .map(node -> node.localToScene(node.getLayoutBounds()))
        .toList();
  }

  /** Issue 13: twelve unplaced lamps pushed the timeline off the window. */
  @Test
  void sixtyLampsWithoutAPlaceLeaveTheLayoutAsItIs(FxRobot robot) {
    java.util.List<Bounds> one = geometry(robot, 1);
    assertThat(geometry(robot, 60)).isEqualTo(one);
    javafx.scene.control.MenuButton list = robot.lookup("#unplaced").query();
    assertThat(list.getText()).isEqualTo("Not placed: 60");
    assertThat(list.getItems()).hasSize(60);
  }

  @Test
  void lampIsRenamedInItsPlaceMutedAndItsCueMovedByItsRibbon(FxRobot robot) {
    robot.interact(() -> window.parts().bench().open(Projects4Tests.sample("recovery-tractor")));
    WaitForAsyncUtils.waitForFxEvents();
    robot.clickOn(at(robot, "beacon-left", 0, 1000, 0.8));
    robot.type(KeyCode.F2);
    robot.push(KeyCode.SHORTCUT, KeyCode.A).write("Beacon").type(KeyCode.ENTER);
    assertThat(project().rig().lamp("beacon-left").orElseThrow().name()).isEqualTo("Beacon");
    robot.type(KeyCode.F2).write("Other").type(KeyCode.ESCAPE);
    assertThat(project().rig().lamp("beacon-left").orElseThrow().name()).isEqualTo("Beacon");
    assertThat(robot.lookup("#hidden-lamps").query().isVisible()).isFalse();
    robot.type(KeyCode.X);
    assertThat(window.parts().sheet().signs().shows("beacon-left")).isFalse();
    assertThat(robot.lookup("#hidden-lamps").query().isVisible()).isTrue();
    robot.clickOn("#hidden-lamps");
    assertThat(window.parts().sheet().signs().shows("beacon-left")).isTrue();
    // The light within the cue, then the cue itself.
    double inStrip = 1.2;
    robot
        .drag(at(robot, "beacon-left", 0, 1000, inStrip), MouseButton.PRIMARY)
        .dropTo(at(robot, "beacon-left", 0, 1100, inStrip));
    assertThat(window.parts().bench().cue().orElseThrow().pattern().startPhase().orElseThrow())
        .isNotZero();
    assertThat(window.parts().bench().cue().orElseThrow().startMs()).isZero();
    // As the platform asks for it; the headless one has no such gesture.
    Point2D spot = at(robot, "beacon-left", 0, 1000, 0.8);
    Node ribbons = robot.lookup("#ribbons").query();
    robot.interact(
        () ->
            ribbons.fireEvent(
                new javafx.scene.input.ContextMenuEvent(
                    javafx.scene.input.ContextMenuEvent.CONTEXT_MENU_REQUESTED,
                    0,
                    0,
                    spot.getX(),
                    spot.getY(),
                    false,
                    new javafx.scene.input.PickResult(ribbons, spot.getX(), spot.getY()))));
    WaitForAsyncUtils.waitForFxEvents();
    robot.clickOn("#popup-ribbons-act-remove");
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(window.parts().bench().undoNameProperty().get()).contains("Remove cue");
  }

  /** A divider that is let go where no drag was told of before. */
  @Test
  void titlesAreAsWideAsWhereTheirEdgeIsLetGo(FxRobot robot) {
    WaitForAsyncUtils.waitForFxEvents();
    Node divider = robot.lookup("#ribbons-divider").query();
    double before = divider.getBoundsInParent().getCenterX();
    robot.interact(() -> new MouseHand(divider).press(3, 100).release(3, 100));
    robot.interact(() -> divider.getParent().layout());
    assertThat(divider.getBoundsInParent().getCenterX()).isEqualTo(before);
    robot.interact(() -> new MouseHand(divider).press(3, 100).drag(10, 100).release(43, 100));
    robot.interact(() -> divider.getParent().layout());
    assertThat(divider.getBoundsInParent().getCenterX())
        .isCloseTo(before + 40, org.assertj.core.api.Assertions.within(1.0));
  }

  /** Issue 13: dragging a lamp drew the whole outline anew at every step. */
  @Test
  void draggedLampLeavesTheOutlineAsItIs(FxRobot robot) {
    robot.interact(() -> window.parts().bench().open(Projects4Tests.sample("recovery-tractor")));
    WaitForAsyncUtils.waitForFxEvents();
    robot.interact(() -> window.parts().drawing().choose("beacon-left", false));
    WaitForAsyncUtils.waitForFxEvents();
    DrawingView view = robot.lookup("#drawing").queryAs(DrawingView.class);
    int before = view.outlines();
    Project still = project();
    robot.interact(() -> window.parts().drawing().nudge(0.02, 0.01));
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(project()).isNotEqualTo(still);
    assertThat(view.outlines()).isEqualTo(before);
    robot.interact(() -> window.parts().drawing().zoom(2));
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(view.outlines()).isEqualTo(before + 1);
  }
}
