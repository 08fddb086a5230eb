package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.control.TextArea;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

@ExtendWith(ApplicationExtension.class)
class DialogWindowsTest {
  private final DialogWindows dialogs = new DialogWindows();

  @Start
  void show(Stage stage) {
    stage.setScene(new Scene(new Pane(), 300, 200));
    stage.show();
    dialogs.setOwner(stage);
  }

  private CompletableFuture<Integer> ask(String text) {
    CompletableFuture<Integer> answer = new CompletableFuture<>();
    Platform.runLater(
        () -> answer.complete(dialogs.choose("Title", text, List.of("Save", "Drop", "Cancel"))));
    WaitForAsyncUtils.waitForFxEvents();
    return answer;
  }

  @Test
  void enterAndEscapeGiveTheHarmlessAnswer(FxRobot robot) throws Exception {
    CompletableFuture<Integer> entered = ask("text");
    robot.type(KeyCode.ENTER);
    assertThat(entered.get(5, TimeUnit.MINUTES)).isEqualTo(2);
    CompletableFuture<Integer> escaped = ask("text");
    robot.type(KeyCode.ESCAPE);
    assertThat(escaped.get(5, TimeUnit.MINUTES)).isEqualTo(2);
  }

  @Test
  void chosenAnswerIsGivenByItsIndex(FxRobot robot) throws Exception {
    CompletableFuture<Integer> answer = ask("text");
    robot.clickOn("Drop");
    assertThat(answer.get(5, TimeUnit.MINUTES)).isEqualTo(1);
  }

  @Test
  void longTextCanBeScrolled(FxRobot robot) throws Exception {
    CompletableFuture<Integer> answer = ask("a line of a long list\n".repeat(100));
    assertThat(robot.lookup(node -> node instanceof TextArea).tryQuery()).isPresent();
    robot.clickOn("Save");
    assertThat(answer.get(5, TimeUnit.MINUTES)).isZero();
  }
}
