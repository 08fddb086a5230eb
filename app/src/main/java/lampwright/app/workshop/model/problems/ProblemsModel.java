package lampwright.app.workshop.model.problems;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.value.ObservableValue;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import lampwright.app.workshop.edit.Selection;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Playhead;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.project.ColourReach;
import lampwright.engine.project.Project;
import lampwright.engine.project.SceneCaution;

/**
 * Everything that is wrong: the advice on the scene on the bench, colours that can't be mixed and
 * oddities of the whole project; worst first. For the screen's thread; it searches in the
 * background.
 */
public final class ProblemsModel {
  private final Bench bench;
  private final Playhead playhead;
  private final ObservableValue<Optional<SceneReport>> report;
  private final Executor background;
  private final Executor screen;
  private final ObservableList<ProblemRow> rows = FXCollections.observableArrayList();
  private final ObservableList<ProblemRow> unmodifiable =
      FXCollections.unmodifiableObservableList(rows);
  private final ReadOnlyBooleanWrapper searching = new ReadOnlyBooleanWrapper();
  private BiConsumer<Target, ProblemRow> guide = (target, row) -> {};
  private List<ProblemRow> ofProject = List.of();
  private boolean running;

  /**
   * @param report what was measured of the scene on the bench
   * @param background does what takes longer than a frame
   * @param screen runs what it is given on the screen's thread
   */
  public ProblemsModel(
      Bench bench,
      Playhead playhead,
      ObservableValue<Optional<SceneReport>> report,
      Executor background,
      Executor screen) {
    this.bench = bench;
    this.playhead = playhead;
    this.report = report;
    this.background = background;
    this.screen = screen;
    report.addListener((of, before, now) -> show());
    bench.projectProperty().addListener((of, before, now) -> search());
    search();
  }

  /** The problems, worst first. */
  public ObservableList<ProblemRow> rows() {
    return unmodifiable;
  }

  /** Whether an edit since may have changed the list. */
  public ReadOnlyBooleanProperty searchingProperty() {
    return searching.getReadOnlyProperty();
  }

  /** Told where to lead, after what is on the bench was chosen; opens a sheet or pane for it. */
  public void setGuide(BiConsumer<Target, ProblemRow> newGuide) {
    guide = newGuide;
  }

  /** Leads to the spot: chooses the lamp, cue or scene, shows the frame, and tells the guide. */
  public void leadTo(ProblemRow row) {
    Selection now = bench.selection();
    if (row.target() instanceof Target.OfLamp lamp) {
      bench.select(now.withLamps(List.of(lamp.id())));
    } else if (row.target() instanceof Target.OfCue cue) {
      bench.select(inScene(now, cue.scene()).withCues(List.of(cue.cue())));
      playhead.go(start(cue));
    } else if (row.target() instanceof Target.OfScene scene) {
      bench.select(inScene(now, scene.id()));
    }
    row.frame().ifPresent(playhead::go);
    guide.accept(row.target(), row);
  }

  private static Selection inScene(Selection now, String scene) {
    return now.scene().equals(Optional.of(scene)) ? now : now.withScene(scene);
  }

  // The first frame that the cue covers.
  private int start(Target.OfCue target) {
    return bench
        .project()
        .scene(target.scene())
        .flatMap(
            scene ->
                target
                    .cue()
                    .in(scene)
                    .map(
                        cue ->
                            (int)
                                Math.ceil(
                                    cue.startMs().doubleValue()
                                        * scene.framesPerSecond().doubleValue()
                                        / 1000)))
        .orElse(0);
  }

  // One search at a time; the project as it is when that ends is searched next.
  private void search() {
    searching.set(true);
    if (running) {
      return;
    }
    running = true;
    Project project = bench.project();
    background.execute(
        () -> {
          List<ProblemRow> found = find(project);
          screen.execute(() -> found(project, found));
        });
  }

  private void found(Project project, List<ProblemRow> found) {
    running = false;
    if (!project.equals(bench.project())) {
      search();
      return;
    }
    searching.set(false);
    ofProject = found;
    show();
  }

  private static List<ProblemRow> find(Project project) {
    List<ProblemRow> found = new ArrayList<>();
    SceneCaution.of(project).forEach(caution -> found.add(ProblemRow.of(caution, project)));
    ColourReach.of(project).forEach(reach -> found.add(ProblemRow.of(reach, project)));
    return found;
  }

  private void show() {
    List<ProblemRow> all = new ArrayList<>();
    report
        .getValue()
        .ifPresent(
            measured -> {
              String scene = measured.table().scene().id();
              measured.advice().forEach(advice -> all.add(ProblemRow.of(advice, scene)));
            });
    all.addAll(ofProject);
    all.sort(Comparator.comparing(ProblemRow::weight));
    if (!all.equals(rows)) {
      rows.setAll(all);
    }
  }
}
