package lampwright.app.workshop.model;

import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.Setting;
import lampwright.engine.document.Project;

/**
 * Makes slots for the settings of one part of the project.
 *
 * @param <R> the record that the settings belong to
 */
public final class SlotMaker<R> {
  private final Bench bench;
  private final Function<Project, Optional<R>> find;
  private final BiFunction<Project, UnaryOperator<R>, Project> change;
  private final Function<String, String> editName;

  /**
   * @param find the record in a project; empty if it is gone
   * @param change the project with the record changed
   * @param editName names an edit by its setting's key
   */
  public SlotMaker(
      Bench bench,
      Function<Project, Optional<R>> find,
      BiFunction<Project, UnaryOperator<R>, Project> change,
      Function<String, String> editName) {
    this.bench = bench;
    this.find = find;
    this.change = change;
    this.editName = editName;
  }

  /** A slot for a setting; the record must be there. */
  public <V> Slot<V> slot(Setting<R, V> setting) {
    V first = find.apply(bench.project()).map(setting.get()).orElseThrow();
    return new Slot<>(
        setting.key(),
        setting.kind(),
        first,
        () -> find.apply(bench.project()).map(setting.get()),
        (value, gesture) -> set(setting, value, gesture));
  }

  private <V> Optional<String> set(Setting<R, V> setting, V value, Optional<Object> gesture) {
    Edit edit =
        new Edit(
            editName.apply(setting.key()),
            project -> change.apply(project, record -> setting.set().apply(record, value)),
            gesture);
    return bench.apply(edit) ? Optional.empty() : bench.refusalProperty().get();
  }
}
