package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Region;
import javafx.scene.text.Text;
import javafx.stage.Stage;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.rig.RigPart;
import lampwright.engine.document.Project;
import lampwright.engine.situation.Situation;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** In the smallest window that is promised no words are cut and no form scrolls sideways. */
@ExtendWith(ApplicationExtension.class)
class LeastSizeTest {
  /** A beacon, whites, an indicator: forms of each width. */
  private static final int MOST_CUES = 4;

  @TempDir static Path folder;

  private WorkshopWindow window;
  private Stage stage;

  @Start
  void start(Stage shown) throws IOException {
    Locale.setDefault(Locale.ROOT);
    stage = shown;
    window =
        TestWindow.open(
            stage, folder, Optional.of(Path.of("../samples/recovery-tractor.lampwright.json")));
    stage.setWidth(1100);
    stage.setHeight(700);
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  @Test
  void nothingIsCutInAnyPanel(FxRobot robot) throws Exception {
    robot.interact(() -> window.panels().show(WorkshopPanels.CUE));
    nothingIsCut(robot, "scene");
    // The gauges with all that they can read.
    robot.interact(() -> window.parts().drawing().choose("beacon-left", false));
    TestWindow.await(
        () ->
            robot
                .lookup("#gauge-flash .gauge-reading")
                .queryAs(Label.class)
                .getText()
                .endsWith("/min"));
    nothingIsCut(robot, "lamp");
    Project project = window.parts().bench().project();
    for (int track = 0; track < MOST_CUES; track++) {
      List<CueRef> cue = List.of(new CueRef(track, 0));
      robot.interact(
          () -> window.parts().bench().select(window.parts().bench().selection().withCues(cue)));
      nothingIsCut(robot, "cue " + cue);
    }
    robot.interact(() -> window.panels().show(WorkshopPanels.SHELF));
    nothingIsCut(robot, "patterns");
    robot.interact(() -> window.panels().show(WorkshopPanels.RIG));
    for (RigPart part : parts(project)) {
      robot.interact(() -> window.parts().rig().chosenProperty().set(part));
      nothingIsCut(robot, "rig " + part);
    }
    robot.interact(() -> window.panels().show(WorkshopPanels.SITUATIONS));
    for (Situation situation : project.situations()) {
      robot.interact(
          () -> window.parts().situations().chosenProperty().set(Optional.of(situation.id())));
      nothingIsCut(robot, "situation " + situation.id());
    }
    robot.interact(() -> window.parts().transmitter().onProperty().set(true));
    nothingIsCut(robot, "transmitter");
    robot.interact(
        () -> {
          window.panels().show(WorkshopPanels.DRIVE);
          window.parts().drive().open(Path.of("../samples/recovery-tractor.drive.csv"));
        });
    TestWindow.await(() -> window.parts().drive().runProperty().get().isPresent());
    nothingIsCut(robot, "drive");
    robot.interact(() -> window.panels().show(WorkshopPanels.LINK));
    nothingIsCut(robot, "bench link");
    robot.interact(() -> window.parts().walk().start(project.rig().chains().get(0)));
    nothingIsCut(robot, "naming walk");
    robot.interact(
        () -> {
          window.parts().walk().cancel();
          window.parts().order().start(project.rig().chains().get(0));
        });
    nothingIsCut(robot, "colour order");
    robot.interact(window::showStart);
    nothingIsCut(robot, "start sheet");
  }

  private static List<RigPart> parts(Project project) {
    return List.of(
        new RigPart.Supply(),
        new RigPart.OfChain(project.rig().chains().get(0).id()),
        new RigPart.OfOutput(project.rig().outputs().get(0).id()),
        new RigPart.OfLamp(project.rig().lamps().get(0).id()),
        new RigPart.OfScene(project.scenes().get(0).id()));
  }

  private void nothingIsCut(FxRobot robot, String state) {
    WaitForAsyncUtils.waitForFxEvents();
    List<String> cut = new ArrayList<>();
    Scene scene = stage.getScene();
    robot.interact(
        () -> {
          scene.getRoot().layout();
          walk(scene.getRoot(), scene, cut);
        });
    assertThat(cut).as(state).isEmpty();
  }

  private static void walk(Node node, Scene scene, List<String> cut) {
    if (!node.isVisible()) {
      return;
    }
    if (node instanceof ScrollBar bar
        && bar.getOrientation() == Orientation.HORIZONTAL
        && !bar.getParent().getStyleClass().contains("ribbons")) {
      cut.add("scrolls sideways: " + bar.getParent());
    }
    if (node instanceof ScrollPane pane
        && pane.isFitToWidth()
        && pane.getContent() instanceof Region content
        && content.getWidth() > pane.getViewportBounds().getWidth() + 0.5) {
      cut.add("wider than what shows it: " + content);
    }
    if (node instanceof Labeled labeled && isCut(labeled)) {
      cut.add(labeled.getText());
    }
    if (node instanceof Labeled labeled && outside(labeled, scene)) {
      cut.add("outside of the window: " + labeled.getText());
    }
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> walk(child, scene, cut));
    }
  }

  // What a skin writes is what there was room for; a tip has the rest where one is.
  private static boolean isCut(Labeled labeled) {
    return labeled.getText() != null
        && !labeled.getText().isEmpty()
        && !hasTip(labeled)
        && labeled.getContentDisplay() != javafx.scene.control.ContentDisplay.GRAPHIC_ONLY
        && labeled.getChildrenUnmodifiable().stream()
            .filter(Text.class::isInstance)
            .map(Text.class::cast)
            .anyMatch(text -> text.isVisible() && !text.getText().equals(labeled.getText()));
  }

  // Its own, or that of the cell that it is in.
  private static boolean hasTip(Labeled labeled) {
    for (Node node = labeled; node != null; node = node.getParent()) {
      if (node instanceof Control control && control.getTooltip() != null) {
        return true;
      }
    }
    return false;
  }

  private static boolean outside(Labeled labeled, Scene scene) {
    double right = labeled.localToScene(labeled.getLayoutBounds()).getMaxX();
    return labeled instanceof Label && right > scene.getWidth() + 0.5;
  }
}
