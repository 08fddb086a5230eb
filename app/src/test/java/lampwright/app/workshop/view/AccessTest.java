package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.control.Slider;
import javafx.scene.control.Spinner;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.workshop.edit.CueRef;
import lampwright.engine.rig.Chain;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** Every control of each main state has words for a screen reader and is reached by Tab. */
@ExtendWith(ApplicationExtension.class)
class AccessTest {
  private static final int MOST_STOPS = 250;

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
  }

  @AfterEach
  void close(FxRobot robot) {
    TestWindow.close(window, robot);
  }

  @Test
  void sceneWithoutACue(FxRobot robot) {
    robot.interact(() -> window.panels().show(WorkshopPanels.CUE));
    assertThat(window.parts().bench().cue()).isEmpty();
    assertThat(robot.lookup("#scene-next-shelf-act-show").tryQuery()).isPresent();
    everyControlIsNamedAndReached(robot);
  }

  @Test
  void selectedCue(FxRobot robot) {
    robot.interact(
        () -> {
          window.panels().show(WorkshopPanels.CUE);
          window
              .parts()
              .bench()
              .select(window.parts().bench().selection().withCues(List.of(new CueRef(0, 0))));
        });
    everyControlIsNamedAndReached(robot);
  }

  @Test
  void shelf(FxRobot robot) {
    robot.interact(() -> window.panels().show(WorkshopPanels.SHELF));
    everyControlIsNamedAndReached(robot);
  }

  @Test
  void rig(FxRobot robot) {
    robot.interact(() -> window.panels().show(WorkshopPanels.RIG));
    everyControlIsNamedAndReached(robot);
  }

  @Test
  void situations(FxRobot robot) {
    robot.interact(
        () -> {
          window.panels().show(WorkshopPanels.SITUATIONS);
          window.parts().situations().chosenProperty().set(Optional.of("standing"));
          window.parts().transmitter().onProperty().set(true);
        });
    everyControlIsNamedAndReached(robot);
  }

  @Test
  void drive(FxRobot robot) {
    robot.interact(() -> window.panels().show(WorkshopPanels.DRIVE));
    everyControlIsNamedAndReached(robot);
  }

  @Test
  void benchLink(FxRobot robot) throws Exception {
    TestWindow.await(() -> window.parts().bench().project().rig().chains().size() == 2);
    robot.interact(
        () -> {
          window.panels().show(WorkshopPanels.LINK);
          window.parts().link().portProperty().set(Optional.of("no-such-port"));
        });
    everyControlIsNamedAndReached(robot);
    Chain roof = window.parts().bench().project().rig().chains().get(0);
    robot.interact(
        () -> {
          window.parts().walk().start(roof);
          window.parts().walk().skip();
        });
    everyControlIsNamedAndReached(robot);
    robot.interact(
        () -> {
          window.parts().walk().cancel();
          window.parts().order().start(roof);
        });
    everyControlIsNamedAndReached(robot);
  }

  @Test
  void startSheet(FxRobot robot) {
    robot.interact(window::showStart);
    everyControlIsNamedAndReached(robot);
  }

  private void everyControlIsNamedAndReached(FxRobot robot) {
    WaitForAsyncUtils.waitForFxEvents();
    Scene scene = stage.getScene();
    List<Control> controls = new ArrayList<>();
    robot.interact(() -> collect(scene.getRoot(), controls));
    assertThat(controls).hasSizeGreaterThan(10);
    Set<Node> labelled = new HashSet<>();
    robot.interact(() -> labelled(scene.getRoot(), labelled));
    List<Control> nameless =
        controls.stream().filter(control -> !named(control, labelled)).toList();
    assertThat(nameless).as("no words for a screen reader").isEmpty();
    Set<Node> reached = walk(robot, scene);
    for (Control control : controls) {
      if (!reached.contains(control) && !besideIsReached(control, reached)) {
        reached.addAll(walkAlong(robot, scene, control, reached));
      }
    }
    List<Control> missed =
        controls.stream()
            .filter(control -> !reached.contains(control) && !besideIsReached(control, reached))
            .toList();
    assertThat(missed).as("not reached by Tab or, in a row of the like, by arrows").isEmpty();
  }

  // What a hand can work: parts of controls are reached through these.
  private static void collect(Node node, List<Control> into) {
    if (!node.isVisible() || node.isDisabled()) {
      return;
    }
    boolean worked =
        node instanceof ButtonBase
            || node instanceof ComboBoxBase
            || node instanceof TextInputControl
            || node instanceof Slider
            || node instanceof Spinner
            || node instanceof ListView;
    if (worked && ofALook(node)) {
      into.add((Control) node);
    } else if (node instanceof Parent parent && !worked) {
      parent.getChildrenUnmodifiable().forEach(child -> collect(child, into));
    }
  }

  // The menus are opened by their own keys; one card of a group has the focus for all.
  private static boolean ofALook(Node node) {
    boolean ofMenus = false;
    for (Node at = node; at != null; at = at.getParent()) {
      ofMenus |= at.getStyleClass().contains("menu-bar");
    }
    return !ofMenus && !node.getStyleClass().contains("arrow-button");
  }

  private static void labelled(Node node, Set<Node> into) {
    if (node instanceof Label label && label.getLabelFor() != null) {
      into.add(label.getLabelFor());
    }
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> labelled(child, into));
    }
  }

  private static boolean named(Node node, Set<Node> labelled) {
    boolean words = node.getAccessibleText() != null && !node.getAccessibleText().isBlank();
    boolean text =
        node instanceof Labeled labeled
            && labeled.getText() != null
            && labeled.getText().codePoints().anyMatch(Character::isLetterOrDigit);
    return words || text || labelled.contains(node);
  }

  // Tab goes to one of a group that excludes each other, arrows go on (JavaFX's own rule).
  private static boolean besideIsReached(Control control, Set<Node> reached) {
    return control instanceof ToggleButton toggle
        && toggle.getToggleGroup() != null
        && toggle.getToggleGroup().getToggles().stream().anyMatch(reached::contains);
  }

  /** What the arrow to the right reaches from one beside it that Tab reaches. */
  private static Set<Node> walkAlong(
      FxRobot robot, Scene scene, Control control, Set<Node> reached) {
    List<Node> row = control.getParent().getChildrenUnmodifiable();
    Set<Node> along = new HashSet<>();
    for (Node first : row) {
      if (reached.contains(first)) {
        robot.interact(first::requestFocus);
        for (int k = 0; k < row.size(); k++) {
          robot.type(KeyCode.RIGHT);
          along.add(scene.getFocusOwner());
        }
        break;
      }
    }
    along.retainAll(row);
    return along;
  }

  private static Set<Node> walk(FxRobot robot, Scene scene) {
    Set<Node> reached = new HashSet<>();
    // From the first stop on, until one comes round again: where it began may be no stop itself.
    robot.type(KeyCode.TAB);
    Set<Node> stops = new HashSet<>();
    for (int k = 0; k < MOST_STOPS && stops.add(scene.getFocusOwner()); k++) {
      for (Node at = scene.getFocusOwner(); at != null; at = at.getParent()) {
        reached.add(at);
      }
      robot.type(KeyCode.TAB);
    }
    return reached;
  }
}
