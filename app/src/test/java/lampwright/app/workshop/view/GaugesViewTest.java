package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Gauge;
import lampwright.app.workshop.model.GaugesModel;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.PackService;
import lampwright.app.workshop.model.Playhead;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

@ExtendWith(ApplicationExtension.class)
class GaugesViewTest {
  private final List<Gauge> led = new ArrayList<>();
  private final Bench bench = new Bench(Projects4Tests.sample("recovery-tractor"));
  private LightService lights;
  private PackService packs;

  @Start
  void start(Stage stage) {
    // Here, since their results need the toolkit.
    lights = new LightService(bench, Platform::runLater);
    packs = new PackService(bench, Platform::runLater);
    GaugesModel model = new GaugesModel(bench, lights, packs, new Playhead(bench));
    Scene scene = new Scene(new GaugesView(model.all(), led::add), 1100, 60);
    Theme.dress(scene, true);
    stage.setScene(scene);
    stage.show();
  }

  @AfterEach
  void close() {
    lights.close();
    packs.close();
  }

  @Test
  void gaugeLeadsToWhatItMeasures(FxRobot robot) {
    robot.clickOn("#gauge-wire");
    assertThat(led).hasSize(1).first().extracting(Gauge::key).isEqualTo("wire");
    robot.type(KeyCode.TAB).type(KeyCode.SPACE);
    assertThat(led).hasSize(2).last().extracting(Gauge::key).isEqualTo("memory");
  }

  @Test
  void gaugeSaysWhatItShowsToAScreenReader(FxRobot robot) {
    Button wire = robot.lookup("#gauge-wire").queryButton();
    assertThat(wire.getAccessibleText()).startsWith("data line: ").endsWith(", within limit");
  }
}
