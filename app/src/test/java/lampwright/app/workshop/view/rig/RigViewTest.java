package lampwright.app.workshop.view.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.app.workshop.model.rig.RigCommands;
import lampwright.app.workshop.model.rig.RigModel;
import lampwright.app.workshop.model.rig.RigPart;
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

/** The list of parts, its buttons and the form: what is typed goes to the part that is chosen. */
@ExtendWith(ApplicationExtension.class)
class RigViewTest {
  private final ReadyAnswers dialogs = new ReadyAnswers();
  private final Bench bench = new Bench(project());
  private final RigModel model = new RigModel(bench, dialogs);

  private static Project project() {
    return Project.of(
        "two of each",
        Rig.of(
            List.of(chain("roof", 8), chain("deck", 6)),
            List.of(DriverOutput.of("bow"), DriverOutput.of("stern")),
            List.of(
                Lamp.ofPixels("bar", new PixelRun("roof", 0, 3)),
                Lamp.ofPixels("floods", new PixelRun("deck", 0, 2)))),
        Projects.emptyScene("work", 1000),
        Projects.emptyScene("rest", 500));
  }

  private static Chain chain(String id, int pixels) {
    return new Chain(id, BuiltInPixelTypes.find("ws2812b").orElseThrow(), pixels);
  }

  @Start
  void show(Stage stage) {
    RigView view = new RigView(model, new RigCommands(model, dialogs));
    stage.setScene(new Scene(view, 1200, 700));
    stage.show();
  }

  private void choose(FxRobot robot, RigPart part) {
    ListView<RigPart> list = robot.lookup("#rig-parts").queryListView();
    robot.interact(() -> list.getSelectionModel().select(part));
    WaitForAsyncUtils.waitForFxEvents();
  }

  private static TextField field(FxRobot robot, String key) {
    return robot.lookup("#field-" + key).queryAs(TextField.class);
  }

  private static void enter(FxRobot robot, String key, String text) {
    TextField field = field(robot, key);
    robot.interact(
        () -> {
          field.requestFocus();
          field.setText(text);
        });
    robot.type(KeyCode.ENTER);
    WaitForAsyncUtils.waitForFxEvents();
  }

  private Chain chain(int index) {
    return bench.project().rig().chains().get(index);
  }

  private List<PixelRun> runs(String lamp) {
    return ((Fitting.Pixels) bench.project().rig().lamp(lamp).orElseThrow().fitting()).runs();
  }

  @Test
  void formIsThatOfTheChosenPartAndChangesNoOther(FxRobot robot) {
    choose(robot, new RigPart.OfChain("deck"));
    assertThat(field(robot, "chain-id").getText()).isEqualTo("deck");
    assertThat(field(robot, "pixels").getText()).isEqualTo("6");
    enter(robot, "pixels", "7");
    assertThat(chain(1).pixels()).isEqualTo(7);
    assertThat(chain(0)).isEqualTo(chain("roof", 8));
    enter(robot, "chain-id", "hold");
    assertThat(bench.project().rig().chains())
        .extracting(Chain::id)
        .containsExactly("roof", "hold");
    assertThat(runs("floods")).containsExactly(new PixelRun("hold", 0, 2));
    choose(robot, new RigPart.OfChain("roof"));
    assertThat(field(robot, "chain-id").getText()).isEqualTo("roof");
    assertThat(field(robot, "pixels").getText()).isEqualTo("8");
  }

  @Test
  void outputsCurrentIsThatOutputs(FxRobot robot) {
    choose(robot, new RigPart.OfOutput("stern"));
    enter(robot, "milliamps", "35");
    assertThat(bench.project().rig().outputs())
        .extracting(DriverOutput::milliamps)
        .containsExactly(20.0, 35.0);
    assertThat(field(robot, "milliamps").getText()).isEqualTo("35");
    robot.interact(bench::undo);
    assertThat(field(robot, "milliamps").getText()).as("the form follows").isEqualTo("20");
  }

  @Test
  void lampOrSceneOfTheListIsPutOnTheBench(FxRobot robot) {
    choose(robot, new RigPart.OfLamp("floods"));
    assertThat(bench.selection().lamps()).containsExactly("floods");
    choose(robot, new RigPart.OfScene("rest"));
    assertThat(bench.selection().scene()).contains("rest");
    assertThat(field(robot, "scene-id").getText()).isEqualTo("rest");
  }

  @Test
  void selectionElsewhereIsShownInTheList(FxRobot robot) {
    robot.interact(() -> bench.select(bench.selection().withLamps(List.of("bar"))));
    ListView<RigPart> list = robot.lookup("#rig-parts").queryListView();
    assertThat(list.getSelectionModel().getSelectedItem()).isEqualTo(new RigPart.OfLamp("bar"));
    assertThat(field(robot, "lamp-id").getText()).isEqualTo("bar");
  }

  @Test
  void typedPixelsAreThoseOfTheLamp(FxRobot robot) {
    choose(robot, new RigPart.OfLamp("floods"));
    assertThat(field(robot, "runs").getText()).isEqualTo("deck 0-1");
    enter(robot, "runs", "deck 3 - 5, roof 7");
    assertThat(runs("floods"))
        .containsExactly(new PixelRun("deck", 3, 3), new PixelRun("roof", 7, 1));
    assertThat(runs("bar")).containsExactly(new PixelRun("roof", 0, 3));
    assertThat(field(robot, "runs").getText()).isEqualTo("deck 3-5, roof 7");
  }

  @Test
  void pixelsThatAreNotWrittenSoAreNoPixels() {
    for (String text :
        List.of("deck 5-2", "deck", "3", "deck 1;2", "Deck 1", "deck -1", "deck 0, ")) {
      assertThat(RunsField.parse(text)).as(text).isEmpty();
    }
  }

  @Test
  void refusedPixelsSayWhyAndChangeNothing(FxRobot robot) {
    choose(robot, new RigPart.OfLamp("floods"));
    Project before = bench.project();
    Map<String, String> refused =
        Map.of(
            "deck 2-1", "! chain and pixels, such as roof 0-3, roof 6",
            "deck 90", "! ",
            "roof 2", "! ");
    refused.forEach(
        (text, why) -> {
          enter(robot, "runs", text);
          assertThat(bench.project()).as(text).isEqualTo(before);
          assertThat(robot.lookup(".field-trouble").queryAllAs(Label.class))
              .as(text)
              .anyMatch(label -> label.getText().startsWith(why));
        });
  }

  @Test
  void eachButtonDoesWhatItSays(FxRobot robot) {
    Map<String, ToIntFunction<Project>> counts =
        Map.of(
            "addChain", p -> p.rig().chains().size(),
            "addOutput", p -> p.rig().outputs().size(),
            "addType", p -> p.pixelTypes().size(),
            "addScene", p -> p.scenes().size(),
            "makeLamp", p -> p.rig().lamps().size());
    for (String pressed : counts.keySet()) {
      choose(robot, new RigPart.OfChain("roof"));
      Project before = bench.project();
      robot.interact(() -> robot.lookup("#rig-" + pressed).queryButton().fire());
      counts.forEach(
          (what, count) ->
              assertThat(count.applyAsInt(bench.project()) - count.applyAsInt(before))
                  .as(pressed + ": " + what)
                  .isEqualTo(what.equals(pressed) ? 1 : 0));
      robot.interact(bench::undo);
      assertThat(bench.project()).as(pressed).isEqualTo(before);
    }
  }

  @Test
  void lampsAreMadeOfEveryFreePixelAndTheChosenPartIsRemoved(FxRobot robot) {
    choose(robot, new RigPart.OfChain("deck"));
    robot.interact(() -> robot.lookup("#rig-makeLamps").queryButton().fire());
    assertThat(bench.project().rig().lamps()).hasSize(2 + 4);
    choose(robot, new RigPart.OfOutput("bow"));
    robot.interact(() -> robot.lookup("#rig-remove").queryButton().fire());
    assertThat(bench.project().rig().outputs())
        .extracting(DriverOutput::id)
        .containsExactly("stern");
    assertThat(Optional.of(model.chosenProperty().get())).contains(new RigPart.Supply());
  }
}
