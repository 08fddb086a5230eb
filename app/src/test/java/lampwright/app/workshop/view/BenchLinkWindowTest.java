package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.workshop.edit.ColourOrders.Seen;
import lampwright.app.workshop.model.live.NamingWalk;
import lampwright.engine.rig.Chain;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** The panel of the bench link in the real window, by keyboard. */
@ExtendWith(ApplicationExtension.class)
class BenchLinkWindowTest {
  @TempDir static Path folder;

  private WorkshopWindow window;
  private Stage stage;

  @Start
  void start(Stage shown) throws IOException {
    Locale.setDefault(Locale.ROOT);
    stage = shown;
    window =
        TestWindow.openCopy(stage, folder, Path.of("../samples/recovery-tractor.lampwright.json"));
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  private Optional<NamingWalk.Step> step() {
    WaitForAsyncUtils.waitForFxEvents();
    return window.parts().walk().stepProperty().get();
  }

  // What is opened brings a panel of its own into sight.
  private void open(FxRobot robot) throws TimeoutException {
    TestWindow.await(
        () ->
            window.parts().files().document().file().isPresent()
                && !window.parts().bench().project().rig().lamps().isEmpty());
    robot.interact(() -> window.panels().show(WorkshopPanels.LINK));
  }

  private void awaitFocus(String id) throws TimeoutException {
    TestWindow.await(
        () -> {
          Node owner = stage.getScene().getFocusOwner();
          return owner != null && id.equals(owner.getId());
        });
  }

  private Chain roof() {
    return window.parts().bench().project().rig().chains().get(0);
  }

  @Test
  void gaugeOpensThePanelAndPortsThatAreMissingAreReported(FxRobot robot) throws Exception {
    open(robot);
    robot.interact(() -> window.panels().show(WorkshopPanels.CUE));
    robot.clickOn("#gauge-link");
    assertThat(window.panels().shown()).isEqualTo(WorkshopPanels.LINK);
    assertThat(robot.lookup("#link-rate").queryAs(Label.class).getText())
        .contains("18 pixels, 67 bytes per frame at 500000 baud");
    robot.interact(() -> window.parts().link().portProperty().set(Optional.of("no-such-port-18")));
    robot.clickOn("#link-connect");
    Label state = robot.lookup("#link-state").queryAs(Label.class);
    TestWindow.await(() -> state.getText().startsWith("! no-such-port-18: no such port."));
    Button gauge = robot.lookup("#gauge-link").queryButton();
    TestWindow.await(() -> gauge.getAccessibleText().equals("bench link: failed, trouble"));
  }

  @Test
  void pixelsAreNamedByTypingAndByPicking(FxRobot robot) throws TimeoutException {
    open(robot);
    robot.interact(() -> window.parts().walk().start(roof()));
    awaitFocus("walk-name");
    robot.write("work").type(KeyCode.DOWN).type(KeyCode.ENTER);
    assertThat(step().orElseThrow().names().lamps().get(0)).contains("work-rear");
    robot.interact(robot.lookup("#drawing").query()::requestFocus);
    robot.interact(() -> window.parts().sheet().picker().give("beacon-left"));
    assertThat(step().orElseThrow().names().lamps().get(1)).contains("beacon-left");
    // What is typed then is a name, and no command of the drawing.
    awaitFocus("walk-name");
    robot.interact(robot.lookup("#walk-back").query()::requestFocus);
    robot.type(KeyCode.SPACE).type(KeyCode.SPACE);
    assertThat(step().orElseThrow().pixel()).isZero();
    robot.interact(robot.lookup("#walk-name").query()::requestFocus);
    robot.type(KeyCode.ESCAPE);
    assertThat(step()).isEmpty();
  }

  @Test
  void colourOrderIsAskedByButtons(FxRobot robot) throws TimeoutException {
    open(robot);
    robot.interact(() -> window.parts().order().start(roof()));
    awaitFocus("order-seen-red");
    robot.type(KeyCode.SPACE);
    robot.clickOn("#order-seen-green");
    WaitForAsyncUtils.waitForFxEvents();
    assertThat(window.parts().order().questionProperty().get().orElseThrow().seen())
        .containsExactly(Seen.RED, Seen.GREEN);
    assertThat(robot.lookup("#order-asked").queryAs(Label.class).getText())
        .startsWith("Byte 3 of 4 is lit");
  }
}
