package lampwright.app.workshop.model.situation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import lampwright.app.workshop.edit.ConditionKind;
import lampwright.app.workshop.edit.ConditionSettings;
import lampwright.app.workshop.edit.ConditionSource;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.edit.SituationEdits;
import lampwright.app.workshop.edit.SituationSettings;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.Form;
import lampwright.app.workshop.model.Slot;
import lampwright.app.workshop.model.SlotMaker;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Situation;
import lampwright.engine.words.SituationWords;

/** The ladder of situations, which of them is selected, and its values and conditions. */
public final class SituationsModel {
  private record Structure(String id, List<String> scenes) {}

  private record Conditions(String id, List<ConditionSource> sources, List<Object> rows) {}

  private final Texts texts = Texts.of("situations");
  private final Texts names = Texts.of("settings");
  private final SituationWords words = new SituationWords();
  private final Bench bench;
  private final Dialogs dialogs;
  private final Transmitter transmitter;
  private final ObjectProperty<Optional<String>> chosen =
      new SimpleObjectProperty<>(Optional.empty());
  private final ReadOnlyObjectWrapper<List<Rung>> rungs = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<Optional<Form>> form =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Form>> conditions =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  public SituationsModel(Bench bench, Dialogs dialogs, Transmitter transmitter) {
    this.bench = bench;
    this.dialogs = dialogs;
    this.transmitter = transmitter;
    chosen.addListener((of, before, now) -> refresh());
    bench.watch(BenchState::project, (before, now) -> refresh());
    refresh();
  }

  /** The id of the situation whose values are shown. */
  public ObjectProperty<Optional<String>> chosenProperty() {
    return chosen;
  }

  /** The situations, that of the highest priority first. */
  public ReadOnlyObjectProperty<List<Rung>> rungsProperty() {
    return rungs.getReadOnlyProperty();
  }

  /** The values of the selected one. */
  public ReadOnlyObjectProperty<Optional<Form>> formProperty() {
    return form.getReadOnlyProperty();
  }

  /** Its conditions, a group for each. */
  public ReadOnlyObjectProperty<Optional<Form>> conditionsProperty() {
    return conditions.getReadOnlyProperty();
  }

  /** The selected situation. */
  public Optional<Situation> situation() {
    return chosen.get().flatMap(id -> SituationEdits.find(bench.state().project(), id));
  }

  /** Adds a situation above all others and selects it. */
  public void add() {
    String id =
        Projects.freeId(
            "situation", bench.project().situations().stream().map(Situation::id).toList());
    if (apply(texts.get("edit.add"), p -> SituationEdits.add(p, id))) {
      chosen.set(Optional.of(id));
    }
  }

  /** Removes the selected one; its neighbour is selected then. */
  public void remove() {
    Optional<String> id = chosen.get().filter(i -> situation().isPresent());
    if (id.isEmpty()) {
      return;
    }
    List<String> naming = SituationEdits.naming(bench.project(), id.get());
    if (!naming.isEmpty()) {
      dialogs.tell(
          texts.get("remove.title"),
          texts.get("remove.named", id.get(), String.join(", ", naming)));
      return;
    }
    List<String> ids = rungs.get().stream().map(Rung::id).toList();
    int at = ids.indexOf(id.get());
    Optional<String> next =
        ids.size() == 1
            ? Optional.empty()
            : Optional.of(ids.get(at + 1 < ids.size() ? at + 1 : at - 1));
    if (apply(texts.get("edit.remove", id.get()), p -> SituationEdits.remove(p, id.get()))) {
      chosen.set(next);
    }
  }

  /**
   * Moves the selected one past its neighbour on the ladder.
   *
   * @param by 1 up, -1 down
   */
  public void raise(int by) {
    chosen
        .get()
        .ifPresent(
            id ->
                apply(
                    texts.get(by > 0 ? "edit.raise" : "edit.lower", id),
                    p -> SituationEdits.raise(p, id, by)));
  }

  /** Selects the next situation (1 down the ladder, -1 up). */
  public void step(int by) {
    List<String> ids = rungs.get().stream().map(Rung::id).toList();
    if (!ids.isEmpty()) {
      int at = chosen.get().map(ids::indexOf).orElse(by > 0 ? -1 : 0);
      chosen.set(Optional.of(ids.get(Math.max(0, Math.min(ids.size() - 1, at + by)))));
    }
  }

  /** Whether there is something that a condition could look at. */
  public boolean hasSources() {
    return situation().filter(s -> !sources(s.id()).isEmpty()).isPresent();
  }

  /** Adds a condition to the selected one. */
  public void addCondition() {
    situation()
        .filter(s -> hasSources())
        .ifPresent(
            s ->
                withConditions(
                    texts.get("edit.addCondition"),
                    all -> all.add(ConditionSettings.first(sources(s.id()).get(0)))));
  }

  /** Removes one of its conditions. */
  public void removeCondition(int place) {
    withConditions(texts.get("edit.removeCondition"), all -> all.remove(place));
  }

  /** The width that the stick of a condition has now; none without a threshold. */
  public OptionalInt stick(int place) {
    return condition(place)
        .filter(c -> !ConditionSettings.taking(c, 0).equals(ConditionSettings.taking(c, 1)))
        .flatMap(c -> c.criterion().input())
        .flatMap(transmitter::control)
        .map(control -> OptionalInt.of(control.widthUsProperty().get()))
        .orElseGet(OptionalInt::empty);
  }

  /** Takes the threshold of a condition from its stick. */
  public void setHere(int place) {
    stick(place)
        .ifPresent(
            us ->
                withConditions(
                    texts.get("edit.setHere"),
                    all -> all.set(place, ConditionSettings.taking(all.get(place), us))));
  }

  private Optional<Condition> condition(int place) {
    return situation()
        .map(s -> s.trigger().conditions())
        .filter(all -> place < all.size())
        .map(all -> all.get(place));
  }

  /** Changes a list in place. */
  @FunctionalInterface
  private interface Change {
    void in(List<Condition> all);
  }

  private void withConditions(String name, Change change) {
    chosen
        .get()
        .ifPresent(
            id ->
                apply(
                    name,
                    p ->
                        SituationEdits.change(
                            p,
                            id,
                            s -> {
                              List<Condition> all = new ArrayList<>(s.trigger().conditions());
                              change.in(all);
                              return SituationEdits.withConditions(s, all);
                            })));
  }

  private boolean apply(String name, UnaryOperator<Project> change) {
    return bench.apply(Edit.of(name, change));
  }

  private List<ConditionSource> sources(String id) {
    return ConditionSource.of(bench.state().project(), id);
  }

  private void refresh() {
    Project project = bench.state().project();
    rungs.set(
        SituationEdits.ladder(project).stream()
            .map(
                s ->
                    new Rung(
                        s.id(),
                        s.priority(),
                        s.scene().orElseGet(() -> texts.get("rung.noScene")),
                        words.when(s)))
            .toList());
    if (chosen.get().isPresent() && situation().isEmpty()) {
      chosen.set(Optional.empty());
      return;
    }
    show(form, situation().map(this::structure), () -> valuesOf(situation().orElseThrow()));
    show(conditions, situation().map(this::rows), () -> conditionsOf(situation().orElseThrow()));
  }

  private static void show(
      ReadOnlyObjectWrapper<Optional<Form>> where,
      Optional<?> structure,
      java.util.function.Supplier<Form> make) {
    if (structure.isEmpty()) {
      where.set(Optional.empty());
    } else if (where.get().map(Form::structure).equals(structure)) {
      where.get().orElseThrow().refresh();
    } else {
      where.set(Optional.of(make.get()));
    }
  }

  private Object structure(Situation situation) {
    return new Structure(
        situation.id(), bench.state().project().scenes().stream().map(Scene::id).toList());
  }

  // Another kind of condition has other numbers.
  private Object rows(Situation situation) {
    return new Conditions(
        situation.id(),
        sources(situation.id()),
        situation.trigger().conditions().stream()
            .<Object>map(
                c -> List.of(ConditionKind.of(c.criterion()), c.criterion().input().isPresent()))
            .toList());
  }

  private Form valuesOf(Situation situation) {
    String id = situation.id();
    SlotMaker<Situation> slots =
        new SlotMaker<>(
            bench,
            p -> SituationEdits.find(p, id),
            (p, change) -> SituationEdits.change(p, id, change),
            this::editName);
    List<Slot<?>> all = new ArrayList<>();
    all.add(idSlot(id));
    SituationSettings.of(bench.state().project()).forEach(s -> all.add(slots.slot(s)));
    all.add(slots.slot(SituationSettings.join()));
    return new Form(structure(situation), id, List.of(new Form.Group("situation", all)));
  }

  private Slot<String> idSlot(String id) {
    return new Slot<>(
        "situation.id",
        new Kind.Text(40),
        id,
        () -> Optional.of(id),
        (value, gesture) -> {
          Edit edit =
              new Edit(editName("situation.id"), p -> SituationEdits.rename(p, id, value), gesture);
          if (!bench.apply(edit)) {
            return bench.refusalProperty().get();
          }
          chosen.set(Optional.of(value));
          return Optional.empty();
        });
  }

  private Form conditionsOf(Situation situation) {
    List<Form.Group> groups = new ArrayList<>();
    for (int i = 0; i < situation.trigger().conditions().size(); i++) {
      groups.add(new Form.Group("condition", slots(situation, i)));
    }
    return new Form(rows(situation), situation.id(), groups);
  }

  private List<Slot<?>> slots(Situation situation, int place) {
    String id = situation.id();
    SlotMaker<Condition> slots =
        new SlotMaker<>(
            bench,
            p ->
                SituationEdits.find(p, id)
                    .map(s -> s.trigger().conditions())
                    .filter(all -> place < all.size())
                    .map(all -> all.get(place)),
            (p, change) ->
                SituationEdits.change(
                    p,
                    id,
                    s ->
                        SituationEdits.withConditions(
                            s, Projects.replaced(s.trigger().conditions(), place, change))),
            this::editName);
    List<Slot<?>> all = new ArrayList<>();
    ConditionSettings.of(
            situation.trigger().conditions().get(place), sources(id), this::nameOfSource)
        .forEach(setting -> all.add(slots.slot(setting)));
    return all;
  }

  private String nameOfSource(ConditionSource source) {
    return source.sort() == ConditionSource.Sort.SITUATION
        ? texts.get("source.situation", source.id())
        : source.id();
  }

  private String editName(String key) {
    return texts.get("edit.set", names.get(key));
  }
}
