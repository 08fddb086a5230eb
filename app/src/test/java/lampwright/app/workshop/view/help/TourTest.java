package lampwright.app.workshop.view.help;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import javafx.geometry.Bounds;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

@ExtendWith(ApplicationExtension.class)
class TourTest {
  private final Button left = new Button("left");
  private final Button right = new Button("right");
  private Tour tour;

  @Start
  void show(Stage stage) {
    Locale.setDefault(Locale.ROOT);
    tour = new Tour(List.of(new Tour.Stop("drawing", left), new Tour.Stop("ribbons", right)));
    left.setPrefSize(200, 300);
    right.setPrefSize(400, 300);
    stage.setScene(new Scene(new StackPane(new HBox(left, right), tour), 600, 500));
    stage.show();
  }

  private static Bounds of(FxRobot robot, String query) {
    var node = robot.lookup(query).query();
    return node.localToScene(node.getBoundsInLocal());
  }

  @Test
  void leadsFromPartToPartByKeyAndGivesTheFocusBack(FxRobot robot) {
    robot.interact(right::requestFocus);
    robot.interact(tour::begin);
    Label title = robot.lookup("#tour-title").queryAs(Label.class);
    assertThat(title.getText()).isEqualTo("Step 1 of 2: Model");
    robot.type(KeyCode.ENTER);
    assertThat(title.getText()).isEqualTo("Step 2 of 2: Ribbons");
    robot.interact(() -> {});
    Bounds frame = of(robot, ".tour-frame");
    assertThat(frame.getMinX()).isEqualTo(200);
    assertThat(frame.getWidth()).isEqualTo(400);
    robot.interact(() -> robot.lookup("#tour-back").queryButton().fire());
    assertThat(title.getText()).startsWith("Step 1");
    robot.type(KeyCode.ENTER, KeyCode.ENTER);
    assertThat(tour.isVisible()).isFalse();
    assertThat(right.isFocused()).isTrue();
  }

  @Test
  void isLeftByEscapeAndStaysWithinTheWindow(FxRobot robot) {
    robot.interact(tour::begin);
    robot.interact(() -> {});
    Bounds card = of(robot, "#tour-card");
    assertThat(card.getMinX()).isNotNegative();
    assertThat(card.getMaxX()).isLessThanOrEqualTo(tour.getScene().getWidth());
    assertThat(card.getMaxY()).isLessThanOrEqualTo(tour.getScene().getHeight());
    robot.type(KeyCode.ESCAPE);
    assertThat(tour.isVisible()).isFalse();
  }

  @Test
  void windowCanBeUsedMeanwhile(FxRobot robot) {
    boolean[] pressed = {false};
    left.setOnAction(event -> pressed[0] = true);
    robot.interact(tour::begin);
    robot.interact(() -> {});
    robot.clickOn(left, javafx.scene.input.MouseButton.PRIMARY);
    assertThat(pressed[0]).isTrue();
  }
}
