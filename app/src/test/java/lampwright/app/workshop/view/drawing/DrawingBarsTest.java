package lampwright.app.workshop.view.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.scene.Scene;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.Slider;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.PixelExplainer;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.app.workshop.model.play.Player;
import lampwright.app.workshop.view.TestWindow;
import lampwright.engine.rig.View;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

/** The bars of the drawing: each control is bound to its own part of the sheet or the player. */
@ExtendWith(ApplicationExtension.class)
class DrawingBarsTest {
  /** One second at 50 frames a second; no lamp of it has a place. */
  private final Bench bench = new Bench(Projects4Tests.small());

  private final LightService lights = new LightService(bench, work -> {});
  private final Playhead playhead = new Playhead(bench);
  private final DrawingSheet sheet = new DrawingSheet();
  private final DrawingModel model =
      new DrawingModel(bench, lights, playhead, sheet, new PixelExplainer(bench, work -> {}));
  private final Player player =
      new Player(
          bench,
          lights,
          playhead,
          new ReadyAnswers(),
          new ReadOnlyObjectWrapper<>(Optional.empty()));

  @Start
  void show(Stage stage) {
    stage.setScene(
        new Scene(
            new VBox(new DrawingBar(model), new TransportBar(bench, playhead, player)), 900, 120));
    stage.show();
  }

  @AfterEach
  void close(FxRobot robot) {
    robot.interact(player::pause);
    lights.close();
  }

  private static ToggleButton toggle(FxRobot robot, String id) {
    return robot.lookup("#" + id).queryAs(ToggleButton.class);
  }

  private void fire(FxRobot robot, String id) {
    robot.interact(() -> robot.lookup("#" + id).queryButton().fire());
  }

  @Test
  void eachSideHasItsButtonAndOneIsAlwaysDown(FxRobot robot) {
    for (View view : View.values()) {
      robot.interact(() -> toggle(robot, "view-" + view.key()).setSelected(true));
      assertThat(sheet.viewProperty().get()).isEqualTo(view);
      robot.interact(() -> toggle(robot, "view-" + view.key()).setSelected(false));
      assertThat(toggle(robot, "view-" + view.key()).isSelected()).isTrue();
      assertThat(sheet.viewProperty().get()).isEqualTo(view);
    }
    robot.interact(() -> sheet.viewProperty().set(View.TOP));
    assertThat(toggle(robot, "view-top").isSelected()).isTrue();
  }

  @Test
  void nightAndExposureAreThoseOfTheSheet(FxRobot robot) throws TimeoutException {
    ToggleButton night = toggle(robot, "night");
    boolean before = sheet.nightProperty().get();
    String words = night.getText();
    robot.interact(night::fire);
    assertThat(sheet.nightProperty().get()).isEqualTo(!before);
    assertThat(night.getText()).isNotEqualTo(words);
    Slider exposure = robot.lookup("#exposure").queryAs(Slider.class);
    Label factor = robot.lookup(".field-range").queryAs(Label.class);
    robot.interact(() -> exposure.setValue(3));
    assertThat(model.exposures().doublingsProperty().get()).isEqualTo(3);
    TestWindow.await(() -> factor.getText().contains("8"));
    robot.interact(() -> model.exposures().doublingsProperty().set(-2));
    assertThat(exposure.getValue()).isEqualTo(-2);
    TestWindow.await(() -> factor.getText().contains("1/4"));
  }

  /** Three quarters of the screen's white: the next doubling would be above it. */
  @Test
  void pressOnTheMeterTakesTheMostLightThatFits(FxRobot robot) {
    robot.interact(() -> model.exposures().painted(sheet.viewProperty().get(), 0.1875, 1));
    fire(robot, "exposure-meter");
    assertThat(model.exposures().doublingsProperty().get()).isEqualTo(2);
  }

  @Test
  void lampsWithoutAPlaceAreListedUntilTheyHaveOne(FxRobot robot) {
    MenuButton list = robot.lookup("#unplaced").queryAs(MenuButton.class);
    assertThat(list.getItems())
        .extracting(MenuItem::getId)
        .containsExactly("unplaced-roof", "unplaced-amber");
    robot.interact(() -> list.getItems().get(1).fire());
    assertThat(bench.selection().lamps()).containsExactly("amber");
    robot.interact(() -> model.put("amber", 0.5, 0.5));
    assertThat(list.getItems()).extracting(MenuItem::getId).containsExactly("unplaced-roof");
    robot.interact(() -> model.put("roof", 0.5, 0.5));
    assertThat(list.isVisible()).isFalse();
  }

  @Test
  void transportStepsAndGoesToBothEnds(FxRobot robot) {
    fire(robot, "forward");
    fire(robot, "forward");
    assertThat(playhead.frame()).isEqualTo(2);
    fire(robot, "back");
    assertThat(playhead.frame()).isEqualTo(1);
    // Frame 1 of 50 a second is at 20 ms.
    assertThat(robot.lookup("#time").queryAs(Label.class).getText()).contains("0.020\u00a0s", "50");
    fire(robot, "toEnd");
    assertThat(playhead.frame()).isEqualTo(49);
    fire(robot, "toStart");
    assertThat(playhead.frame()).isZero();
    robot.interact(() -> bench.select(bench.selection().withScene("rest")));
    assertThat(robot.lookup("#time").queryAs(Label.class).getText()).contains("25");
  }

  @Test
  void playLoopAndPaceAreThePlayers(FxRobot robot) {
    fire(robot, "play");
    assertThat(player.playingProperty().get()).isTrue();
    fire(robot, "play");
    assertThat(player.playingProperty().get()).isFalse();
    boolean looping = player.loopingProperty().get();
    robot.interact(() -> toggle(robot, "loop").fire());
    assertThat(player.loopingProperty().get()).isEqualTo(!looping);
    ComboBox<Player.Pace> pace = robot.lookup("#pace").queryComboBox();
    assertThat(List.copyOf(pace.getItems())).containsExactly(Player.Pace.values());
    robot.interact(() -> pace.setValue(Player.Pace.TENTH));
    assertThat(player.paceProperty().get()).isEqualTo(Player.Pace.TENTH);
    robot.interact(() -> player.paceProperty().set(Player.Pace.FULL));
    assertThat(pace.getValue()).isEqualTo(Player.Pace.FULL);
  }
}
