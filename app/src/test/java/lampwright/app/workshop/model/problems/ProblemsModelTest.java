package lampwright.app.workshop.model.problems;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.Samples;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.PackService;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.files.Turns;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Severity;
import lampwright.engine.work.LatestWorker;
import org.junit.jupiter.api.Test;

class ProblemsModelTest {
  private final Turns turns = new Turns();
  private final Project project = Samples.troubled();
  private final Bench bench = new Bench(project);
  private final Playhead playhead = new Playhead(bench);
  private final ObjectProperty<Optional<SceneReport>> report =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<Optional<PackService.Packed>> packed =
      new SimpleObjectProperty<>(Optional.empty());
  private final BooleanProperty measuring = new SimpleBooleanProperty();
  private final ProblemsModel model =
      new ProblemsModel(
          bench,
          playhead,
          report,
          measuring,
          packed,
          new LatestWorker(turns, turns, LatestWorker.Ending.ASK));

  private void measure(String scene) {
    bench.select(bench.selection().withScene(scene));
    report.set(
        Optional.of(
            SceneReport.of(FrameTable.of(project.rig(), project.scene(scene).orElseThrow()))));
    turns.drain();
  }

  private ProblemRow row(Class<? extends Target> target, String words) {
    return model.rows().stream()
        .filter(r -> target.isInstance(r.target()) && r.finding().what().contains(words))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void everyKindIsListedWorstFirst() {
    measure("wild");
    assertThat(model.rows())
        .isSortedAccordingTo(Comparator.comparing((ProblemRow row) -> row.finding().severity()))
        .extracting(ProblemRow::target)
        .contains(
            new Target.OfRig(Target.RigPart.SUPPLY),
            new Target.OfLamp("beacon"),
            new Target.OfScene("wild"),
            new Target.OfCue("wild", new CueRef(0, 0)));
    assertThat(model.rows().get(0).finding().severity()).isEqualTo(Severity.DANGER);
    assertThat(model.rows()).allMatch(row -> !row.finding().what().isBlank());
  }

  @Test
  void oddityOfAnotherSceneLeadsThere() {
    measure("calm");
    ProblemRow past = row(Target.OfCue.class, "is cut at the end of the scene");
    List<Target> told = new ArrayList<>();
    model.setGuide((target, row) -> told.add(target));
    model.leadTo(past);
    assertThat(bench.selection().scene()).contains("wild");
    assertThat(bench.selection().cue()).contains(new CueRef(0, 0));
    // 500 ms at 50 frames/s.
    assertThat(playhead.frame()).isEqualTo(25);
    assertThat(told).containsExactly(new Target.OfCue("wild", new CueRef(0, 0)));
  }

  @Test
  void adviceOnALampChoosesItAndShowsItsFrame() {
    measure("wild");
    ProblemRow flashes = row(Target.OfLamp.class, "flashes");
    model.leadTo(flashes);
    assertThat(bench.selection().lamp()).contains("beacon");
    assertThat(playhead.frame()).isEqualTo(frame(flashes)).isPositive();
  }

  @Test
  void frameOfTheSupplysPeakIsThatOfItsText() {
    measure("wild");
    Finding supply = row(Target.OfRig.class, "draws").finding();
    double seconds = frame(row(Target.OfRig.class, "draws")) / 50.0;
    assertThat(supply.text())
        .contains(String.format(Locale.ROOT, "supply, scene wild, %.2f s: draws", seconds));
  }

  private static int frame(ProblemRow row) {
    return row.finding().moment().orElseThrow().frame().orElseThrow();
  }

  @Test
  void colourThatCannotBeMixedIsFoundAgainAfterAnEdit() {
    measure("calm");
    assertThat(model.rows()).noneMatch(row -> row.finding().what().contains("mixed"));
    Project odd = Samples.named("bench-rgbw");
    bench.apply(Edit.of("other", now -> Project.SCENES.with(odd, odd.scenes())));
    assertThat(model.checkingProperty().get()).isTrue();
    turns.drain();
    assertThat(model.checkingProperty().get()).isFalse();
    // Its scene is part of what is checked.
    measuring.set(true);
    assertThat(model.checkingProperty().get()).isTrue();
    measuring.set(false);
    assertThat(model.checkingProperty().get()).isFalse();
    assertThat(model.rows()).noneMatch(row -> row.finding().code() == Code.CUE_CUT);
  }
}
