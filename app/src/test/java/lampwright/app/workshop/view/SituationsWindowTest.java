package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.SituationEdits;
import lampwright.app.workshop.model.situation.Rung;
import lampwright.engine.document.Project;
import lampwright.engine.situation.Criterion;
import lampwright.engine.situation.Situation;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** Situations in the real window, by keyboard and mouse. */
@ExtendWith(ApplicationExtension.class)
class SituationsWindowTest {
  @TempDir static Path folder;

  private WorkshopWindow window;

  @Start
  void start(Stage stage) throws IOException {
    Locale.setDefault(Locale.ROOT);
    window = TestWindow.openCopy(stage, folder, Projects4Tests.REACTING);
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  private Project project() {
    return window.parts().bench().project();
  }

  private Situation situation(String id) {
    return SituationEdits.find(project(), id).orElseThrow();
  }

  private List<String> ladder(FxRobot robot) {
    ListView<Rung> list = robot.lookup("#ladder").queryListView();
    return list.getItems().stream().map(Rung::id).toList();
  }

  @Test
  void aSituationIsMadeRaisedTriedAndUndone(FxRobot robot) {
    Project before = project();
    robot.type(KeyCode.F5);
    assertThat(window.panels().shown()).isEqualTo(WorkshopPanels.SITUATIONS);
    robot.clickOn("#situation-add");
    assertThat(ladder(robot).get(0)).isEqualTo("situation-1");
    robot.clickOn("#condition-add");
    assertThat(situation("situation-1").trigger().conditions().get(0).criterion())
        .isEqualTo(new Criterion.Above("throttle", 1600, 20));
    // By keys on the ladder.
    robot.interact(() -> robot.lookup("#ladder").query().requestFocus());
    robot.push(KeyCode.ALT, KeyCode.DOWN);
    assertThat(ladder(robot).subList(0, 2)).containsExactly("signal-lost", "situation-1");
    // A stick, and its place as threshold.
    robot.type(KeyCode.F7);
    assertThat(window.parts().transmitter().onProperty().get()).isTrue();
    Node stick = robot.lookup("#stick-throttle").query();
    robot.interact(stick::requestFocus);
    for (int i = 0; i < 3; i++) {
      robot.type(KeyCode.RIGHT);
    }
    assertThat(
            window.parts().transmitter().control("throttle").orElseThrow().widthUsProperty().get())
        .isEqualTo(1530);
    robot.clickOn("#condition-1-setHere");
    assertThat(situation("situation-1").trigger().conditions().get(0).criterion())
        .isEqualTo(new Criterion.Above("throttle", 1530, 20));
    robot.interact(stick::requestFocus);
    robot.type(KeyCode.RIGHT);
    WaitForAsyncUtils.waitForFxEvents();
    robot.interact(() -> window.parts().transmitter().step(2));
    assertThat(
            window
                .parts()
                .transmitter()
                .stateProperty()
                .get()
                .orElseThrow()
                .rungs()
                .get("situation-1")
                .active())
        .isTrue();
    robot.clickOn("#transmitter-on");
    assertThat(window.parts().sheet().liveProperty().get()).isEmpty();
    for (int i = 0; i < 4; i++) {
      robot.push(KeyCode.SHORTCUT, KeyCode.Z);
    }
    assertThat(project()).isEqualTo(before);
  }

  @Test
  void aFindingLeadsToItsRung(FxRobot robot) throws Exception {
    robot.interact(
        () ->
            window
                .parts()
                .bench()
                .apply(
                    lampwright.app.workshop.edit.Edit.of(
                        "edit",
                        p ->
                            SituationEdits.change(
                                p, "towed", s -> Situation.PRIORITY.with(s, 20)))));
    TestWindow.await(
        () ->
            window.parts().problems().rows().stream()
                .anyMatch(row -> row.place().equals("situation towed")));
    robot.interact(
        () ->
            window.parts().problems().rows().stream()
                .filter(row -> row.place().equals("situation towed"))
                .findFirst()
                .ifPresent(window.parts().problems()::leadTo));
    assertThat(window.panels().shown()).isEqualTo(WorkshopPanels.SITUATIONS);
    assertThat(window.parts().situations().chosenProperty().get()).hasValue("towed");
  }
}
