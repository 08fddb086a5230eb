package lampwright.app.workshop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import lampwright.app.workshop.Samples;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.problems.ProblemRow;
import lampwright.app.workshop.model.problems.ProblemsModel;
import lampwright.app.workshop.model.problems.Target;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.work.LatestWorker;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.api.FxRobot;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;

@ExtendWith(ApplicationExtension.class)
class ProblemsViewTest {
  private final List<Target> led = new ArrayList<>();
  private final BooleanProperty measuring = new SimpleBooleanProperty();
  private final Bench bench = new Bench(Samples.troubled());
  private final ObjectProperty<Optional<SceneReport>> measured =
      new SimpleObjectProperty<>(Optional.empty());
  private ProblemsModel model;

  @Start
  void show(Stage stage) {
    Locale.setDefault(Locale.ROOT);
    Project project = bench.project();
    FrameTable wild = FrameTable.of(project.rig(), project.scene("wild").orElseThrow());
    measured.set(Optional.of(SceneReport.of(wild)));
    model =
        new ProblemsModel(
            bench,
            new Playhead(bench),
            measured,
            measuring,
            new SimpleObjectProperty<>(Optional.empty()),
            new LatestWorker(Runnable::run, Runnable::run, LatestWorker.Ending.ASK));
    model.setGuide((target, row) -> led.add(target));
    Scene scene = new Scene(new ProblemsView(model), 700, 400);
    Theme.dress(scene, false);
    stage.setScene(scene);
    stage.show();
  }

  @Test
  void keysChooseAProblemAndLeadToItsSpot(FxRobot robot) {
    robot.interact(() -> robot.lookup(".list-view").query().requestFocus());
    robot.type(KeyCode.HOME, KeyCode.DOWN, KeyCode.ENTER);
    assertThat(led).containsExactly(model.rows().get(1).target());
  }

  @Test
  void clickLeadsToItsSpot(FxRobot robot) {
    ProblemRow first = model.rows().get(0);
    robot.clickOn(first.place() + ": " + first.finding().what());
    assertThat(led).containsExactly(model.rows().get(0).target());
  }

  /** Nothing found yet is not nothing found. */
  @Test
  void whileItChecksItDoesNotSayThatThereIsNothing(FxRobot robot) {
    robot.interact(
        () -> {
          measured.set(Optional.empty());
          measuring.set(true);
          bench.open(Project.of("clean", Projects.fresh().rig()));
        });
    assertThat(model.rows()).isEmpty();
    assertThat(texts(robot)).containsOnly("Checking…");
    robot.interact(() -> measuring.set(false));
    assertThat(texts(robot)).containsExactlyInAnyOrder("No problems", "No problems found.");
  }

  private static List<String> texts(FxRobot robot) {
    return robot.lookup(".problems .label").queryAllAs(Label.class).stream()
        .filter(label -> label.isVisible() && !(label.getParent() instanceof ButtonBase))
        .map(Label::getText)
        .filter(text -> text != null && !text.isEmpty())
        .toList();
  }

  @Test
  void weightIsSaidInWordsAndBySign(FxRobot robot) {
    Set<Node> cells = robot.lookup(".problem-cell").queryAll();
    Finding worst = model.rows().get(0).finding();
    assertThat(cells)
        .anySatisfy(
            cell ->
                assertThat(cell.getAccessibleText())
                    .startsWith("danger. " + model.rows().get(0).place())
                    .contains(worst.remedy()));
    assertThat(robot.lookup("⚠").tryQuery()).isPresent();
  }
}
