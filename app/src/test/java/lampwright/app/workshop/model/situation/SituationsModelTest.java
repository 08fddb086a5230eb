package lampwright.app.workshop.model.situation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.ConditionKind;
import lampwright.app.workshop.edit.ConditionSource;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.engine.document.Project;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criterion;
import lampwright.engine.situation.Join;
import lampwright.engine.situation.Situation;
import org.junit.jupiter.api.Test;

class SituationsModelTest {
  private final ReadyAnswers dialogs = new ReadyAnswers();
  private final Bench bench = new Bench(Projects4Tests.reacting());
  private final Transmitter transmitter = new Transmitter(bench, new DrawingSheet(), dialogs);
  private final SituationsModel model = new SituationsModel(bench, dialogs, transmitter);

  private void choose(String id) {
    model.chosenProperty().set(Optional.of(id));
  }

  private List<String> ladder() {
    return model.rungsProperty().get().stream().map(Rung::id).toList();
  }

  private Condition condition(int place) {
    return model.situation().orElseThrow().trigger().conditions().get(place);
  }

  @SuppressWarnings("unchecked")
  private static <V> Slot<V> slot(Form.Group group, String key) {
    return (Slot<V>)
        group.slots().stream().filter(s -> s.key().equals(key)).findFirst().orElseThrow();
  }

  private <V> Slot<V> value(String key) {
    return slot(model.formProperty().get().orElseThrow().groups().get(0), key);
  }

  private <V> Slot<V> ofCondition(int place, String key) {
    return slot(model.conditionsProperty().get().orElseThrow().groups().get(place), key);
  }

  @Test
  void ladderReadsSituationsInWords() {
    assertThat(ladder().subList(0, 3)).containsExactly("signal-lost", "towed", "working");
    Rung lost = model.rungsProperty().get().get(0);
    assertThat(lost.priority()).isEqualTo(60);
    assertThat(lost.scene()).isEqualTo("working");
    assertThat(lost.when()).isEqualTo("throttle lost or aux lost; lingers 1000\u00a0ms");
    assertThat(model.rungsProperty().get().get(2).when())
        .isEqualTo("work-switch active and standing active; for 500\u00a0ms");
    assertThat(model.rungsProperty().get().stream().map(Rung::when))
        .contains(
            "always",
            "throttle between 1460 and 1540\u00a0\u00b5s",
            "aux above 1800\u00a0\u00b5s, 2 taps; toggles");
  }

  @Test
  void everyValueSetToItselfChangesNothing() {
    Project before = bench.project();
    for (String id : ladder()) {
      choose(id);
      model.formProperty().get().orElseThrow().groups().forEach(SituationsModelTest::toItself);
      model
          .conditionsProperty()
          .get()
          .orElseThrow()
          .groups()
          .forEach(SituationsModelTest::toItself);
    }
    assertThat(bench.project()).isEqualTo(before);
  }

  private static void toItself(Form.Group group) {
    group.slots().forEach(SituationsModelTest::setToItself);
  }

  private static <V> void setToItself(Slot<V> slot) {
    assertThat(slot.set(slot.value())).as(slot.key()).isTrue();
  }

  @Test
  void addingIsOneStepAndUndone() {
    Project before = bench.project();
    model.add();
    assertThat(ladder().get(0)).isEqualTo("situation-1");
    assertThat(model.chosenProperty().get()).hasValue("situation-1");
    bench.undo();
    assertThat(bench.project()).isEqualTo(before);
    assertThat(model.chosenProperty().get()).isEmpty();
    assertThat(model.formProperty().get()).isEmpty();
  }

  @Test
  void removingSelectsTheNeighbourAndIsRefusedWhileNamed() {
    choose("towed");
    model.remove();
    assertThat(ladder()).doesNotContain("towed");
    assertThat(model.chosenProperty().get()).hasValue("working");
    choose("standing");
    model.remove();
    assertThat(ladder()).contains("standing");
    assertThat(dialogs.told).hasSize(1);
    assertThat(dialogs.told.get(0)).contains("standing: working");
  }

  @Test
  void raisingGoesPastTheNeighbour() {
    choose("working");
    model.raise(1);
    assertThat(ladder().subList(0, 3)).containsExactly("signal-lost", "working", "towed");
    assertThat(bench.undoNameProperty().get()).hasValue("Raise situation working");
    model.raise(-1);
    assertThat(ladder().subList(0, 3)).containsExactly("signal-lost", "towed", "working");
  }

  @Test
  void selectionGoesAlongTheLadderAndStopsAtItsEnds() {
    model.step(1);
    assertThat(model.chosenProperty().get()).hasValue("signal-lost");
    model.step(-1);
    assertThat(model.chosenProperty().get()).hasValue("signal-lost");
    model.step(1);
    assertThat(model.chosenProperty().get()).hasValue("towed");
  }

  @Test
  void valuesAreEditedByTheForm() {
    choose("towed");
    assertThat(this.<Long>value("situation.priority").set(45L)).isTrue();
    assertThat(this.<Boolean>value("situation.toggle").set(true)).isTrue();
    assertThat(this.<Optional<String>>value("situation.scene").set(Optional.empty())).isTrue();
    assertThat(this.<Join>value("situation.join").set(Join.ANY)).isTrue();
    Situation now = model.situation().orElseThrow();
    assertThat(now.priority()).isEqualTo(45);
    assertThat(now.toggle()).isTrue();
    assertThat(now.scene()).isEmpty();
    assertThat(now.trigger().join()).isEqualTo(Join.ANY);
    assertThat(this.<Long>value("situation.priority").set(1001L)).isFalse();
  }

  @Test
  void renamingKeepsItSelected() {
    choose("standing");
    assertThat(this.<String>value("situation.id").set("at-rest")).isTrue();
    assertThat(model.chosenProperty().get()).hasValue("at-rest");
    assertThat(model.rungsProperty().get().get(2).when()).contains("at-rest active");
    assertThat(this.<String>value("situation.id").set("towed")).isFalse();
    assertThat(model.chosenProperty().get()).hasValue("at-rest");
  }

  @Test
  void aConditionIsEditedInItsRow() {
    choose("standing");
    assertThat(this.<Long>ofCondition(0, "condition.fromUs").set(1450L)).isTrue();
    assertThat(condition(0).criterion())
        .isEqualTo(new Criterion.Between("throttle", 1450, 1540, 20));
    assertThat(this.<Long>ofCondition(0, "condition.fromUs").set(1600L)).isFalse();
    assertThat(this.<Optional<Long>>ofCondition(0, "condition.taps").set(Optional.of(3L))).isTrue();
    assertThat(this.<ConditionKind>ofCondition(0, "condition.kind").set(ConditionKind.ABOVE))
        .isTrue();
    assertThat(condition(0))
        .isEqualTo(new Condition(new Criterion.Above("throttle", 1600, 20), OptionalInt.of(3)));
    assertThat(this.<Long>ofCondition(0, "condition.aboveUs").set(1555L)).isTrue();
    assertThat(condition(0).criterion()).isEqualTo(new Criterion.Above("throttle", 1555, 20));
  }

  @Test
  void anotherSourceAsksWhatItCan() {
    choose("standing");
    assertThat(
            this.<ConditionSource>ofCondition(0, "condition.source")
                .set(new ConditionSource(ConditionSource.Sort.SWITCH, "tow-bar")))
        .isTrue();
    assertThat(condition(0).criterion()).isEqualTo(new Criterion.SwitchIs("tow-bar", true));
    // A situation later in the list: the list follows.
    assertThat(
            this.<ConditionSource>ofCondition(0, "condition.source")
                .set(new ConditionSource(ConditionSource.Sort.SITUATION, "towed")))
        .isTrue();
    assertThat(condition(0)).isEqualTo(Condition.of(new Criterion.SituationIs("towed", true)));
    assertThat(this.<ConditionKind>ofCondition(0, "condition.kind").set(ConditionKind.ENDED))
        .isTrue();
    assertThat(model.rungsProperty().get().stream().map(Rung::when))
        .contains("towed ended within 800\u00a0ms");
  }

  @Test
  void conditionsAreAddedAndRemoved() {
    choose("on-the-road");
    assertThat(model.conditionsProperty().get().orElseThrow().groups()).isEmpty();
    model.addCondition();
    assertThat(condition(0)).isEqualTo(Condition.of(new Criterion.Above("throttle", 1600, 20)));
    model.removeCondition(0);
    assertThat(model.situation().orElseThrow().trigger().conditions()).isEmpty();
  }

  @Test
  void aThresholdIsTakenFromTheStick() {
    choose("standing");
    transmitter.control("throttle").orElseThrow().widthUsProperty().set(1433);
    assertThat(model.stick(0)).hasValue(1433);
    model.setHere(0);
    assertThat(condition(0).criterion())
        .isEqualTo(new Criterion.Between("throttle", 1433, 1540, 20));
    choose("towed");
    assertThat(model.stick(0)).isEmpty();
    choose("signal-lost");
    assertThat(model.stick(0)).isEmpty();
  }

  @Test
  void withoutAnInputThereIsNothingToLookAt() {
    bench.open(Projects4Tests.small());
    model.add();
    assertThat(model.hasSources()).isFalse();
    model.addCondition();
    assertThat(model.situation().orElseThrow().trigger().conditions()).isEmpty();
  }
}
