package lampwright.app.workshop.model.problems;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.Samples;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.files.Turns;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.Weight;
import lampwright.engine.project.Project;
import lampwright.engine.render.FrameTable;
import org.junit.jupiter.api.Test;

class ProblemsModelTest {
  private final Turns turns = new Turns();
  private final Project project = Samples.troubled();
  private final Bench bench = new Bench(project);
  private final Playhead playhead = new Playhead(bench);
  private final ObjectProperty<Optional<SceneReport>> report =
      new SimpleObjectProperty<>(Optional.empty());
  private final ProblemsModel model = new ProblemsModel(bench, playhead, report, turns, turns);

  private void measure(String scene) {
    bench.select(bench.selection().withScene(scene));
    report.set(
        Optional.of(
            SceneReport.of(FrameTable.of(project.rig(), project.scene(scene).orElseThrow()))));
    turns.drain();
  }

  private ProblemRow row(Class<? extends Target> target, String words) {
    return model.rows().stream()
        .filter(r -> target.isInstance(r.target()) && r.finding().contains(words))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void everyKindIsListedWorstFirst() {
    measure("wild");
    assertThat(model.rows())
        .isSortedAccordingTo(Comparator.comparing(ProblemRow::weight))
        .extracting(ProblemRow::target)
        .contains(
            new Target.OfRig(Target.RigPart.SUPPLY),
            new Target.OfLamp("beacon"),
            new Target.OfScene("wild"),
            new Target.OfCue("wild", new CueRef(0, 0)));
    assertThat(model.rows().get(0).weight()).isEqualTo(Weight.HARM);
    assertThat(model.rows()).allMatch(row -> !row.finding().isBlank());
  }

  @Test
  void oddityOfAnotherSceneLeadsThere() {
    measure("calm");
    ProblemRow past = row(Target.OfCue.class, "runs past the scene's end");
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
    assertThat(playhead.frame()).isEqualTo(flashes.frame().orElseThrow()).isPositive();
  }

  @Test
  void frameOfTheSupplysPeakIsThatOfItsText() {
    measure("wild");
    ProblemRow supply = row(Target.OfRig.class, "draws");
    assertThat(supply.finding()).contains("in frame " + supply.frame().orElseThrow() + ", at ");
  }

  @Test
  void colourThatCannotBeMixedIsFoundAgainAfterAnEdit() {
    measure("calm");
    assertThat(model.rows()).extracting(ProblemRow::finding).noneMatch(f -> f.contains("mixed"));
    Project odd = Samples.named("bench-rgbw");
    bench.apply(Edit.of("other", now -> odd.withScenes(odd.scenes())));
    assertThat(model.searchingProperty().get()).isTrue();
    turns.drain();
    assertThat(model.searchingProperty().get()).isFalse();
    assertThat(model.rows()).extracting(ProblemRow::finding).noneMatch(f -> f.contains("past"));
  }
}
