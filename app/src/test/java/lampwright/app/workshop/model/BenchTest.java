package lampwright.app.workshop.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.edit.Selection;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import org.junit.jupiter.api.Test;

class BenchTest {
  private final Bench bench = new Bench(Projects4Tests.small());

  @Test
  void benchBeginsWithTheFirstScene() {
    assertThat(bench.selection().scene()).contains("work");
    assertThat(bench.undoNameProperty().get()).isEmpty();
  }

  @Test
  void editsAreUndoneAndRedoneOneByOne() {
    Project first = bench.project();
    assertThat(bench.apply(named("a"))).isTrue();
    assertThat(bench.apply(named("b"))).isTrue();
    Project last = bench.project();
    assertThat(bench.undoNameProperty().get()).contains("Name it b");
    bench.undo();
    assertThat(bench.project().name()).isEqualTo("a");
    assertThat(bench.redoNameProperty().get()).contains("Name it b");
    bench.undo();
    assertThat(bench.project()).isEqualTo(first);
    assertThat(bench.undoNameProperty().get()).isEmpty();
    bench.undo();
    bench.redo();
    bench.redo();
    bench.redo();
    assertThat(bench.project()).isEqualTo(last);
  }

  @Test
  void editAfterUndoForgetsWhatWasUndone() {
    bench.apply(named("a"));
    bench.undo();
    bench.apply(named("b"));
    assertThat(bench.redoNameProperty().get()).isEmpty();
  }

  @Test
  void stepsOfOneGestureAreUndoneAsOne() {
    Project first = bench.project();
    Object drag = new Object();
    bench.apply(named("a").within(drag));
    bench.apply(named("b").within(drag));
    bench.apply(named("c").within(drag));
    bench.undo();
    assertThat(bench.project()).isEqualTo(first);
    bench.redo();
    assertThat(bench.project().name()).isEqualTo("c");
  }

  @Test
  void gestureThatEndedIsNotTakenUpAgain() {
    Object drag = new Object();
    bench.apply(named("a").within(drag));
    bench.endGesture();
    bench.apply(named("b").within(drag));
    bench.undo();
    assertThat(bench.project().name()).isEqualTo("a");
  }

  @Test
  void anotherEditEndsAGesture() {
    Object drag = new Object();
    bench.apply(named("a").within(drag));
    bench.apply(named("b"));
    bench.apply(named("c").within(drag));
    bench.undo();
    assertThat(bench.project().name()).isEqualTo("b");
  }

  @Test
  void undoBringsTheSelectionBackToo() {
    bench.select(bench.selection().withCues(List.of(new CueRef(0, 0))));
    Selection before = bench.selection();
    bench.apply(
        Edit.of(
            "Remove cue",
            p -> Projects.inScene(p, "work", scene -> Scene.TRACKS.with(scene, List.of()))));
    assertThat(bench.selection().cues()).isEmpty();
    bench.undo();
    assertThat(bench.selection()).isEqualTo(before);
  }

  @Test
  void refusedEditChangesNothingAndSaysWhy() {
    Project first = bench.project();
    boolean taken =
        bench.apply(
            Edit.of(
                "Stretch cue",
                p ->
                    Projects.inCue(
                        p, "work", new CueRef(0, 0), c -> Cue.LENGTH_MS.with(c, BigDecimal.ZERO))));
    assertThat(taken).isFalse();
    assertThat(bench.project()).isSameAs(first);
    assertThat(bench.undoNameProperty().get()).isEmpty();
    assertThat(bench.refusalProperty().get())
        .contains("duration: 0: must be between 1 and 86,400,000");
    bench.apply(named("a"));
    assertThat(bench.refusalProperty().get()).isEmpty();
  }

  @Test
  void editThatChangesNothingIsNotKept() {
    bench.apply(named("small"));
    assertThat(bench.undoNameProperty().get()).isEmpty();
  }

  @Test
  void listenersOfTheProjectSeeASelectionWithinIt() {
    bench.select(bench.selection().withLamps(List.of("amber")).withCues(List.of(new CueRef(0, 0))));
    List<Boolean> fits = new ArrayList<>();
    bench.projectProperty().addListener((of, b, now) -> fits.add(fits(bench.selection(), now)));
    bench.apply(
        Edit.of("Remove", p -> Projects.inScene(p, "work", s -> Scene.TRACKS.with(s, List.of()))));
    bench.undo();
    bench.open(Projects.fresh());
    assertThat(fits).containsExactly(true, true, true);
  }

  @Test
  void watchersSeeOneWholeStateForEachChange() {
    List<String> seen = new ArrayList<>();
    bench.watch(
        BenchState::contents,
        (before, now) -> {
          assertThat(now).isEqualTo(bench.state().contents());
          assertThat(bench.projectProperty().get()).isEqualTo(bench.project());
          seen.add(
              before.project().name() + " " + now.project().name() + " " + now.selection().lamp());
        });
    bench.apply(named("a"), bench.selection().withLamps(List.of("amber")));
    bench.select(bench.selection());
    bench.go(3);
    assertThat(seen).containsExactly("small a Optional[amber]");
    bench.undo();
    assertThat(seen).containsExactly("small a Optional[amber]", "a small Optional.empty");
  }

  @Test
  void watcherThatChangesTheStateLeavesEachWatcherWithTheNewest() {
    List<Integer> seen = new ArrayList<>();
    bench.watch(BenchState::frame, (before, now) -> bench.go(Math.max(now, 7)));
    bench.watch(BenchState::frame, (before, now) -> seen.add(now));
    bench.go(5);
    assertThat(seen).containsExactly(7);
    bench.go(9);
    assertThat(seen).containsExactly(7, 9);
  }

  /** Scene work has 50 frames, rest 25. */
  @Test
  void frameStaysWithinItsSceneAndAnotherSceneBeginsAtItsFirst() {
    bench.go(200);
    assertThat(bench.state().frame()).isEqualTo(49);
    bench.go(-1);
    assertThat(bench.state().frame()).isZero();
    bench.go(40);
    bench.apply(
        Edit.of(
            "Shorten",
            p ->
                Projects.inScene(
                    p,
                    "work",
                    s -> Scene.TRACKS.with(Projects.emptyScene(s.id(), 300), s.tracks()))));
    assertThat(bench.state().frame()).isEqualTo(14);
    bench.select(bench.selection().withScene("rest"));
    assertThat(bench.state().frame()).isZero();
    bench.go(24);
    bench.apply(Edit.of("None", p -> Project.SCENES.with(p, List.of())));
    assertThat(bench.state().frame()).isZero();
  }

  @Test
  void openingForgetsTheWayBack() {
    bench.apply(named("a"));
    bench.open(Projects.fresh());
    assertThat(bench.undoNameProperty().get()).isEmpty();
    bench.undo();
    assertThat(bench.project()).isEqualTo(Projects.fresh());
    assertThat(bench.selection().scene()).contains("scene-1");
  }

  @Test
  void selectionOfAnotherProjectIsCutToThisOne() {
    bench.select(
        new Selection(
            Optional.of("nowhere"),
            com.google.common.collect.ImmutableSet.of("roof", "gone"),
            com.google.common.collect.ImmutableSet.of(new CueRef(0, 0))));
    assertThat(bench.selection().scene()).contains("work");
    assertThat(bench.selection().lamps()).containsExactly("roof");
    assertThat(bench.selection().cues()).isEmpty();
  }

  private static boolean fits(Selection selection, Project in) {
    Selection within = selection.within(in);
    return within.lamps().equals(selection.lamps())
        && within.cues().equals(selection.cues())
        && (selection.scene().isEmpty() || within.scene().equals(selection.scene()));
  }

  private static Edit named(String name) {
    return Edit.of("Name it " + name, p -> Project.NAME.with(p, name));
  }
}
