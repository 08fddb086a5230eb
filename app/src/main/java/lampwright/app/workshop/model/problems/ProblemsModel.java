package lampwright.app.workshop.model.problems;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.value.ObservableValue;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import lampwright.app.review.Reviews;
import lampwright.app.workshop.edit.Selection;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.PackService;
import lampwright.app.workshop.model.Playhead;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Review;
import lampwright.engine.work.LatestWorker;
import lampwright.exporters.firmware.FirmwareMemory;

/**
 * The findings about the project and the scene on the bench, gravest first. For the screen's
 * thread; it searches in the background.
 */
public final class ProblemsModel {
  private final Bench bench;
  private final Playhead playhead;
  private final ObservableValue<Optional<SceneReport>> report;
  private final ObservableValue<Optional<PackService.Packed>> packed;
  private final LatestWorker searcher;
  private final ObservableList<ProblemRow> rows = FXCollections.observableArrayList();
  private final ObservableList<ProblemRow> unmodifiable =
      FXCollections.unmodifiableObservableList(rows);
  private final BooleanProperty searching = new SimpleBooleanProperty();
  private final ReadOnlyBooleanWrapper checking = new ReadOnlyBooleanWrapper();
  private BiConsumer<Target, ProblemRow> guide = (target, row) -> {};
  private Consumer<Optional<Finding>> explainer = finding -> {};
  private Optional<ProblemRow> chosen = Optional.empty();
  private List<Finding> ofProject = List.of();

  /**
   * @param report what was measured of the scene on the bench
   * @param measuring whether that is out of date
   * @param packed what packing all scenes gave
   * @param searcher finds what takes longer than a frame
   */
  public ProblemsModel(
      Bench bench,
      Playhead playhead,
      ObservableValue<Optional<SceneReport>> report,
      ReadOnlyBooleanProperty measuring,
      ObservableValue<Optional<PackService.Packed>> packed,
      LatestWorker searcher) {
    this.bench = bench;
    this.playhead = playhead;
    this.report = report;
    this.packed = packed;
    this.searcher = searcher;
    checking.bind(searching.or(measuring));
    report.addListener((of, before, now) -> show());
    packed.addListener((of, before, now) -> show());
    bench.watch(BenchState::project, (before, now) -> search());
    search();
  }

  /** The findings, gravest first. */
  public ObservableList<ProblemRow> rows() {
    return unmodifiable;
  }

  /** The findings as one value. */
  public ObservableValue<List<Finding>> findings() {
    return Bindings.createObjectBinding(
        () -> rows.stream().map(ProblemRow::finding).toList(), rows);
  }

  /** How many of them are problems, and no mere notes. */
  public int problems() {
    return (int) rows.stream().filter(row -> row.finding().severity().problem()).count();
  }

  /** Whether the list may still change: the project is searched, or its scene measured. */
  public ReadOnlyBooleanProperty checkingProperty() {
    return checking.getReadOnlyProperty();
  }

  /** Told where to lead, after what is on the bench was selected; opens a form or pane for it. */
  public void setGuide(BiConsumer<Target, ProblemRow> newGuide) {
    guide = newGuide;
  }

  /** Told what is to be explained; all findings if it is given none. */
  public void setExplainer(Consumer<Optional<Finding>> newExplainer) {
    explainer = newExplainer;
  }

  /** Chooses one for what is asked about it. */
  public void choose(Optional<ProblemRow> row) {
    chosen = row;
  }

  /** Explains the chosen one, or the gravest if none is. */
  public void explain() {
    explainer.accept(
        chosen.filter(rows::contains).or(() -> rows.stream().findFirst()).map(ProblemRow::finding));
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
    row.finding().moment().ifPresent(moment -> moment.frame().ifPresent(playhead::go));
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

  private void search() {
    searching.set(true);
    Project project = bench.project();
    searcher.request(
        turn -> {
          List<Finding> found = Reviews.ALL.ofProject(project);
          turn.show(() -> found(found));
        });
  }

  private void found(List<Finding> found) {
    searching.set(false);
    ofProject = found;
    show();
  }

  private void show() {
    Project project = bench.project();
    List<Finding> all = new ArrayList<>(ofProject);
    report.getValue().ifPresent(measured -> all.addAll(Reviews.ALL.ofScene(project, measured)));
    if (FirmwareMemory.isKnown(project.rig())) {
      packed.getValue().ifPresent(scenes -> all.addAll(scenes.refusals()));
    }
    List<ProblemRow> found =
        Review.sorted(all).stream().map(finding -> ProblemRow.of(project, finding)).toList();
    if (!found.equals(rows)) {
      rows.setAll(found);
    }
  }
}
