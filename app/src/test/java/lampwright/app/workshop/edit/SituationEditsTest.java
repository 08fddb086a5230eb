package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import lampwright.app.workshop.Projects4Tests;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criterion;
import lampwright.engine.situation.Join;
import lampwright.engine.situation.Situation;
import lampwright.engine.situation.Trigger;
import org.junit.jupiter.api.Test;

class SituationEditsTest {
  private final Project tractor = Projects4Tests.reacting();

  private static List<String> ids(Project project) {
    return project.situations().stream().map(Situation::id).toList();
  }

  private static Project of(int... priorities) {
    List<Situation> all = new ArrayList<>();
    for (int i = 0; i < priorities.length; i++) {
      all.add(Situation.PRIORITY.with(Situation.of("s" + i, Trigger.ALWAYS), priorities[i]));
    }
    return Project.SITUATIONS.with(Projects4Tests.small(), all);
  }

  private static int priority(Project project, String id) {
    return SituationEdits.find(project, id).orElseThrow().priority();
  }

  @Test
  void ladderBeginsWithTheHighestPriority() {
    assertThat(SituationEdits.ladder(of(5, 40, 5, 90)).stream().map(Situation::id))
        .containsExactly("s3", "s1", "s0", "s2");
  }

  @Test
  void whatIsAddedIsAboveAllAndTakesNoLamp() {
    Project added = SituationEdits.add(tractor, "new");
    Situation last = SituationEdits.ladder(added).get(0);
    assertThat(last.id()).isEqualTo("new");
    assertThat(last.priority()).isEqualTo(70);
    assertThat(last.scene()).isEmpty();
    assertThat(priority(SituationEdits.add(of(1000), "new"), "new")).isEqualTo(1000);
    assertThat(priority(SituationEdits.add(of(), "new"), "new")).isEqualTo(0);
  }

  @Test
  void raisingExchangesPriorities() {
    Project raised = SituationEdits.raise(of(10, 20, 30), "s0", 1);
    assertThat(priority(raised, "s0")).isEqualTo(20);
    assertThat(priority(raised, "s1")).isEqualTo(10);
    assertThat(priority(raised, "s2")).isEqualTo(30);
    assertThat(SituationEdits.raise(raised, "s0", -1)).isEqualTo(of(10, 20, 30));
  }

  @Test
  void equalPrioritiesAreParted() {
    Project raised = SituationEdits.raise(of(7, 7, 8, 100), "s1", 1);
    assertThat(SituationEdits.ladder(raised).stream().map(Situation::id))
        .containsExactly("s3", "s2", "s1", "s0")
        .isNotEqualTo(SituationEdits.ladder(of(7, 7, 8, 100)));
  }

  @Test
  void endsOfTheLadderStay() {
    Project two = of(10, 20);
    assertThat(SituationEdits.raise(two, "s1", 1)).isEqualTo(two);
    assertThat(SituationEdits.raise(two, "s0", -1)).isEqualTo(two);
    assertThat(SituationEdits.raise(two, "none", 1)).isEqualTo(two);
  }

  /** A move of one step exchanges two neighbours and no others, whatever the priorities were. */
  @Test
  void aStepExchangesTwoNeighboursOnly() {
    Random random = new Random(37);
    for (int round = 0; round < 500; round++) {
      int[] priorities = random.ints(2 + random.nextInt(6), 0, 4).toArray();
      if (round % 5 == 0) {
        priorities[0] = 1000;
        priorities[1] = 1000;
      }
      Project project = of(priorities);
      List<String> ladder =
          new ArrayList<>(SituationEdits.ladder(project).stream().map(Situation::id).toList());
      int at = random.nextInt(ladder.size());
      int by = random.nextBoolean() ? 1 : -1;
      String moved = ladder.get(at);
      if (at - by >= 0 && at - by < ladder.size()) {
        java.util.Collections.swap(ladder, at, at - by);
      }
      assertThat(
              SituationEdits.ladder(SituationEdits.raise(project, moved, by)).stream()
                  .map(Situation::id))
          .as("round %s", round)
          .containsExactlyElementsOf(ladder);
    }
  }

  @Test
  void renamingReachesConditions() {
    Project renamed = SituationEdits.rename(tractor, "standing", "at-rest");
    assertThat(ids(renamed)).contains("at-rest").doesNotContain("standing");
    assertThat(
            SituationEdits.find(renamed, "working")
                .orElseThrow()
                .trigger()
                .conditions()
                .get(1)
                .criterion())
        .isEqualTo(new Criterion.SituationIs("at-rest", true));
    assertThat(SituationEdits.rename(renamed, "at-rest", "standing")).isEqualTo(tractor);
  }

  @Test
  void whatIsNamedIsNotRemoved() {
    assertThat(SituationEdits.naming(tractor, "standing")).containsExactly("working");
    assertThatThrownBy(() -> SituationEdits.remove(tractor, "standing"))
        .isInstanceOf(InvalidModelException.class);
    assertThat(ids(SituationEdits.remove(tractor, "towed"))).doesNotContain("towed");
  }

  @Test
  void whatIsNamedMovesBeforeWhatNamesIt() {
    Project named =
        SituationEdits.change(
            tractor,
            "on-the-road",
            s ->
                Situation.TRIGGER.with(
                    s,
                    new Trigger(
                        Join.ALL,
                        List.of(Condition.of(new Criterion.SituationIs("towed", false))))));
    assertThat(ids(named).indexOf("towed")).isLessThan(ids(named).indexOf("on-the-road"));
    assertThat(ids(named)).hasSameSizeAs(ids(tractor));
  }

  @Test
  void onlyWhatDoesNotLookBackIsOffered() {
    assertThat(SituationEdits.visible(tractor, "standing"))
        .contains("on-the-road", "work-switch", "towed")
        .doesNotContain("standing", "working");
    assertThat(SituationEdits.visible(tractor, "working")).contains("standing", "work-switch");
  }

  @Test
  void aSceneIsClearedFromSituations() {
    assertThat(SituationEdits.showing(tractor, "working"))
        .containsExactly("working", "signal-lost");
    Project without = SituationEdits.withoutScene(tractor, "working");
    assertThat(without.scene("working")).isEmpty();
    assertThat(SituationEdits.find(without, "working").orElseThrow().scene()).isEmpty();
    assertThat(SituationEdits.find(without, "towed").orElseThrow().scene())
        .isEqualTo(Optional.of("towed-backwards"));
  }

  @Test
  void inputsAreRenamedInConditionsAndKeptWhileNamed() {
    Project renamed = InputEdits.rename(tractor, "throttle", "motor");
    assertThat(InputEdits.find(renamed, "motor")).isPresent();
    assertThat(
            SituationEdits.find(renamed, "standing")
                .orElseThrow()
                .trigger()
                .conditions()
                .get(0)
                .criterion())
        .isEqualTo(new Criterion.Between("motor", 1460, 1540, 20));
    assertThat(InputEdits.rename(renamed, "motor", "throttle")).isEqualTo(tractor);
    assertThatThrownBy(() -> InputEdits.remove(tractor, "throttle"))
        .isInstanceOf(InvalidModelException.class);
    Project added = InputEdits.add(tractor);
    assertThat(InputEdits.remove(added, "input-1")).isEqualTo(tractor);
    assertThatThrownBy(
            () -> InputEdits.change(tractor, "throttle", i -> Input.KIND.with(i, InputKind.SWITCH)))
        .isInstanceOf(InvalidModelException.class);
  }

  @Test
  void everyKindOfConditionIsMadeAndKnown() {
    for (ConditionSource.Sort sort : ConditionSource.Sort.values()) {
      for (ConditionKind kind : ConditionKind.of(sort)) {
        assertThat(ConditionKind.of(kind.make("x"))).isEqualTo(kind);
      }
    }
    Criterion above = new Criterion.Above("x", 1700, 5);
    assertThat(ConditionKind.ABOVE.make("y", above)).isEqualTo(new Criterion.Above("y", 1700, 5));
    assertThat(ConditionKind.BELOW.make("y", above)).isEqualTo(new Criterion.Below("y", 1400, 5));
  }

  @Test
  void aThresholdIsTakenAndTheNearerEndOfARange() {
    Condition between =
        new Condition(new Criterion.Between("x", 1460, 1540, 20), OptionalInt.of(2));
    assertThat(ConditionSettings.taking(between, 1400).criterion())
        .isEqualTo(new Criterion.Between("x", 1400, 1540, 20));
    assertThat(ConditionSettings.taking(between, 1501).criterion())
        .isEqualTo(new Criterion.Between("x", 1460, 1501, 20));
    assertThat(ConditionSettings.taking(between, 1501).taps()).hasValue(2);
    Condition lost = Condition.of(new Criterion.Lost("x"));
    assertThat(ConditionSettings.taking(lost, 1400)).isEqualTo(lost);
  }
}
