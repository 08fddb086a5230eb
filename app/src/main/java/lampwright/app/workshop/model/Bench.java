package lampwright.app.workshop.model;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.History;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.edit.Selection;
import lampwright.app.workshop.words.PlaceWords;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;

/**
 * The state of the bench, and the way back. All edits go through {@link #apply}, and whoever shows
 * a part of the state {@linkplain #watch watches} it. For one thread: the screen's.
 */
public final class Bench {
  private final class Watcher<T> {
    private final Function<BenchState, T> part;
    private final BiConsumer<T, T> changed;
    private T seen;

    Watcher(Function<BenchState, T> part, BiConsumer<T, T> changed) {
      this.part = part;
      this.changed = changed;
      this.seen = part.apply(state);
    }

    // A watcher may change the state: the others then see the newest, and each change once.
    void tell() {
      T now = part.apply(state);
      T before = seen;
      if (!now.equals(before)) {
        seen = now;
        changed.accept(before, now);
      }
    }
  }

  private final List<Watcher<?>> watchers = new CopyOnWriteArrayList<>();
  private final ReadOnlyObjectWrapper<Project> project;
  private final ReadOnlyObjectWrapper<Selection> selection;
  private final ReadOnlyObjectWrapper<Optional<String>> refusal =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<String>> undoName =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<String>> redoName =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private History history = new History();
  private BenchState state;
  private BiFunction<Project, Project, Optional<String>> guard =
      (before, after) -> Optional.empty();

  public Bench(Project first) {
    state = BenchState.of(first);
    project = new ReadOnlyObjectWrapper<>(first);
    selection = new ReadOnlyObjectWrapper<>(state.selection());
    watch(BenchState::project, (before, now) -> project.set(now));
    watch(BenchState::selection, (before, now) -> selection.set(now));
  }

  /**
   * Lets every edit be refused by someone who knows of more than the model.
   *
   * @param refuses says why a project may not become another one
   */
  public void setGuard(BiFunction<Project, Project, Optional<String>> refuses) {
    guard = refuses;
  }

  /** All that is on the bench now. */
  public BenchState state() {
    return state;
  }

  /**
   * Watches a part of the state.
   *
   * @param part compared by {@code equals}
   * @param changed is told what it was and what it is, once the whole state is the new one
   */
  public <T> void watch(Function<BenchState, T> part, BiConsumer<T, T> changed) {
    watchers.add(new Watcher<>(part, changed));
  }

  /** The project as it is now; {@link #watch} tells of several parts at once. */
  public ReadOnlyObjectProperty<Project> projectProperty() {
    return project.getReadOnlyProperty();
  }

  public Project project() {
    return state.project();
  }

  /** What is selected; always within the project. */
  public ReadOnlyObjectProperty<Selection> selectionProperty() {
    return selection.getReadOnlyProperty();
  }

  public Selection selection() {
    return state.selection();
  }

  /** Why the last edit was refused; empty once one was made. */
  public ReadOnlyObjectProperty<Optional<String>> refusalProperty() {
    return refusal.getReadOnlyProperty();
  }

  /** What undo would take back. */
  public ReadOnlyObjectProperty<Optional<String>> undoNameProperty() {
    return undoName.getReadOnlyProperty();
  }

  /** What redo would bring back. */
  public ReadOnlyObjectProperty<Optional<String>> redoNameProperty() {
    return redoName.getReadOnlyProperty();
  }

  /** The scene on the bench. */
  public Optional<Scene> scene() {
    return state.scene();
  }

  /** The lamp selected last. */
  public Optional<Lamp> lamp() {
    return selection().lamp().flatMap(id -> project().rig().lamp(id));
  }

  /** The cue selected last. */
  public Optional<Cue> cue() {
    return scene().flatMap(scene -> selection().cue().flatMap(ref -> ref.in(scene)));
  }

  /** The selected cues, in the order in which they were selected. */
  public List<Cue> cues() {
    return scene()
        .map(scene -> selection().cues().stream().flatMap(ref -> ref.in(scene).stream()).toList())
        .orElse(List.of());
  }

  /** Chooses; what the project has not is left out. */
  public void select(Selection wanted) {
    change(state.with(project(), wanted));
  }

  /** Shows a frame, or the nearest that the scene has. */
  public void go(int frame) {
    change(state.withFrame(frame));
  }

  /** Makes an edit, and keeps what is selected. Returns whether the model took it. */
  public boolean apply(Edit edit) {
    return apply(edit, selection());
  }

  /**
   * Makes an edit. Where the model refuses it nothing changes, and {@link #refusalProperty} says
   * why.
   *
   * @param after what is selected then
   * @return whether the model took it
   */
  public boolean apply(Edit edit, Selection after) {
    Project changed;
    try {
      changed = edit.change().apply(project());
    } catch (InvalidModelException refused) {
      refusal.set(Optional.of(PlaceWords.of(project(), refused)));
      return false;
    }
    Optional<String> guarded = guard.apply(project(), changed);
    if (guarded.isPresent()) {
      refusal.set(guarded);
      return false;
    }
    refusal.set(Optional.empty());
    if (!changed.equals(project())) {
      history.did(edit, state.contents());
      show(new History.State(changed, after));
    } else {
      select(after);
    }
    return true;
  }

  /**
   * Changes the scene on the bench.
   *
   * @param name what is done
   * @param gesture steps of one drag have the same one
   * @param change from the scene as it is now
   * @return whether there is a scene and the model took it
   */
  public boolean applyToScene(String name, Optional<Object> gesture, UnaryOperator<Scene> change) {
    return scene()
        .map(scene -> apply(new Edit(name, p -> Projects.inScene(p, scene.id(), change), gesture)))
        .orElse(false);
  }

  /**
   * Changes cues of the scene on the bench and chooses those that the change gives.
   *
   * @param name what is done
   * @param gesture steps of one drag have the same one
   * @param change from the scene as it is now
   * @return whether there is a scene and the model took it
   */
  public boolean applyToCues(
      String name, Optional<Object> gesture, Function<Scene, CueEdits.Changed> change) {
    Optional<Scene> scene = scene();
    if (scene.isEmpty()) {
      return false;
    }
    CueEdits.Changed changed;
    try {
      changed = change.apply(scene.get());
    } catch (InvalidModelException refused) {
      refusal.set(Optional.of(PlaceWords.of(project(), refused)));
      return false;
    }
    Edit edit =
        new Edit(name, p -> Projects.inScene(p, scene.get().id(), s -> changed.scene()), gesture);
    return apply(edit, selection().withCues(changed.cues()));
  }

  /** Ends a drag or a burst of typing: the next edit is undone by itself. */
  public void endGesture() {
    history.endGesture();
  }

  /** Takes a drag that goes on back, as if it had not been. */
  public void cancelGesture() {
    history.dropGesture().ifPresent(this::show);
  }

  /** Takes the last edit back. */
  public void undo() {
    history.undo(state.contents()).ifPresent(this::show);
  }

  /** Makes the edit undone last again. */
  public void redo() {
    history.redo(state.contents()).ifPresent(this::show);
  }

  /** Puts another project on the bench; there is no way back to this one. */
  public void open(Project opened) {
    history = new History();
    refusal.set(Optional.empty());
    show(new History.State(opened, Selection.NOTHING));
  }

  private void show(History.State contents) {
    change(state.with(contents.project(), contents.selection()));
    undoName.set(history.undoName());
    redoName.set(history.redoName());
  }

  private void change(BenchState wanted) {
    state = wanted;
    watchers.forEach(Watcher::tell);
  }
}
