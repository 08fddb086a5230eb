package lampwright.app.workshop.view.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.TimeoutException;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.ColourDropper;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.cue.CueSettingsModel;
import lampwright.app.workshop.view.TestWindow;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.scene.Cue;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The settings of cues: what is typed goes to the selected ones, and to no other. */
@ExtendWith(ApplicationExtension.class)
class CueSettingsViewTest {
  private static final CueRef LEFT = new CueRef(0, 0);
  private static final CueRef RIGHT = new CueRef(1, 0);

  private final Bench bench = new Bench(Projects4Tests.sample("recovery-tractor"));
  private final LightService lights = new LightService(bench, Platform::runLater);
  private final Pane sceneSettings = new Pane();
  private CueSettingsView view;

  @Start
  void show(Stage stage) {
    view =
        new CueSettingsView(
            new CueSettingsModel(bench, lights), new ColourDropper(), sceneSettings);
    stage.setScene(new Scene(view, 900, 600));
    stage.show();
  }

  @AfterEach
  void close() {
    lights.close();
  }

  private void choose(FxRobot robot, CueRef... cues) {
    robot.interact(() -> bench.select(bench.selection().withCues(List.of(cues))));
    WaitForAsyncUtils.waitForFxEvents();
  }

  private static TextField field(FxRobot robot, String key) {
    return robot.lookup("#field-" + key).queryAs(TextField.class);
  }

  private static void type(FxRobot robot, String key, String text) {
    TextField field = field(robot, key);
    robot.interact(
        () -> {
          field.requestFocus();
          field.setText(text);
        });
  }

  private Cue cue(CueRef ref) {
    return ref.in(bench.scene().orElseThrow()).orElseThrow();
  }

  @Test
  void withoutACueTheSceneIsShownInPlaceOfTheForm(FxRobot robot) {
    assertThat(sceneSettings.isVisible()).isTrue();
    assertThat(robot.lookup("#cue-settings .form").query().isVisible()).isFalse();
    choose(robot, LEFT);
    assertThat(sceneSettings.isVisible()).isFalse();
    assertThat(robot.lookup("#cue-settings .form").query().isVisible()).isTrue();
    choose(robot);
    assertThat(sceneSettings.isVisible()).isTrue();
  }

  @Test
  void typedValueIsTheSelectedCuesAlone(FxRobot robot) {
    Cue left = cue(LEFT);
    choose(robot, RIGHT);
    type(robot, "perMinute", "96");
    assertThat(((RotatingBeacon) cue(RIGHT).pattern()).perMinute()).isEqualByComparingTo("96");
    type(robot, "fadeInMs", "250");
    assertThat(cue(RIGHT).fadeInMs()).isEqualByComparingTo("250");
    assertThat(cue(RIGHT).fadeOutMs()).isZero();
    type(robot, "fadeOutMs", "125");
    assertThat(cue(RIGHT).fadeInMs()).isEqualByComparingTo("250");
    assertThat(cue(RIGHT).fadeOutMs()).isEqualByComparingTo("125");
    assertThat(cue(LEFT)).isEqualTo(left);
    choose(robot, LEFT);
    assertThat(field(robot, "perMinute").getText()).isEqualTo("150");
    assertThat(field(robot, "fadeInMs").getText()).isEqualTo("0");
  }

  @Test
  void formFollowsWhatIsUndone(FxRobot robot) {
    choose(robot, LEFT);
    type(robot, "perMinute", "96");
    robot.interact(
        () -> {
          view.requestFocus();
          bench.undo();
        });
    assertThat(field(robot, "perMinute").getText()).isEqualTo("150");
  }

  @Test
  void phasesAreSpreadOfSeveralCuesOnly(FxRobot robot) {
    choose(robot, RIGHT);
    type(robot, "phase", "10");
    assertThat(cue(RIGHT).pattern().startPhase().orElseThrow()).isEqualByComparingTo("0.1");
    choose(robot, LEFT);
    Button phases = robot.lookup("#share-phases").queryButton();
    assertThat(phases.isVisible()).isFalse();
    choose(robot, LEFT, RIGHT);
    assertThat(phases.isVisible()).isTrue();
    robot.interact(phases::fire);
    assertThat(cue(LEFT).pattern().startPhase().orElseThrow()).isZero();
    assertThat(cue(RIGHT).pattern().startPhase().orElseThrow()).isEqualByComparingTo("0.5");
  }

  @Test
  void rateOfARealLampIsOfferedAndTaken(FxRobot robot) throws TimeoutException {
    choose(robot, LEFT);
    Button real = robot.lookup("#like-real").queryButton();
    type(robot, "perMinute", "300");
    TestWindow.await(real::isVisible);
    assertThat(real.getText()).isEqualTo("Set to 240/min");
    robot.interact(real::fire);
    assertThat(((RotatingBeacon) cue(LEFT).pattern()).perMinute()).isEqualByComparingTo("240");
    TestWindow.await(() -> !real.isVisible());
    assertThat(field(robot, "perMinute").getText()).isEqualTo("240");
  }
}
