package lampwright.app.workshop.model;

import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.History;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.edit.Selection;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;

/**
 * The project on the bench, what is chosen in it, and the way back. All edits go through {@link
 * #apply}. For one thread: the screen's.
 */
public final class Bench {
  private final ReadOnlyObjectWrapper<Project> project;
  private final ReadOnlyObjectWrapper<Selection> selection;
  private final ReadOnlyObjectWrapper<Optional<String>> refusal =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<String>> undoName =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<String>> redoName =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private History history = new History();

  public Bench(Project first) {
    project = new ReadOnlyObjectWrapper<>(first);
    selection = new ReadOnlyObjectWrapper<>(Selection.first(first));
  }

  /** The project as it is now. */
  public ReadOnlyObjectProperty<Project> projectProperty() {
    return project.getReadOnlyProperty();
  }

  public Project project() {
    return project.get();
  }

  /** What is chosen; always within the project. */
  public ReadOnlyObjectProperty<Selection> selectionProperty() {
    return selection.getReadOnlyProperty();
  }

  public Selection selection() {
    return selection.get();
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
    return selection().scene().flatMap(id -> project().scene(id));
  }

  /** The lamp chosen last. */
  public Optional<Lamp> lamp() {
    return selection().lamp().flatMap(id -> project().rig().lamp(id));
  }

  /** The cue chosen last. */
  public Optional<Cue> cue() {
    return scene().flatMap(scene -> selection().cue().flatMap(ref -> ref.in(scene)));
  }

  /** Chooses; what the project has not is left out. */
  public void select(Selection wanted) {
    selection.set(wanted.within(project()));
  }

  /** Makes an edit, and keeps what is chosen. Returns whether the model took it. */
  public boolean apply(Edit edit) {
    return apply(edit, selection());
  }

  /**
   * Makes an edit. Where the model refuses it nothing changes, and {@link #refusalProperty} says
   * why.
   *
   * @param after what is chosen then
   * @return whether the model took it
   */
  public boolean apply(Edit edit, Selection after) {
    Project changed;
    try {
      changed = edit.change().apply(project());
    } catch (InvalidModelException refused) {
      refusal.set(Optional.of(String.valueOf(refused.getMessage())));
      return false;
    }
    refusal.set(Optional.empty());
    if (!changed.equals(project())) {
      history.did(edit, now());
      show(new History.State(changed, after));
    } else {
      select(after);
    }
    return true;
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
      refusal.set(Optional.of(String.valueOf(refused.getMessage())));
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
    history.undo(now()).ifPresent(this::show);
  }

  /** Makes the edit undone last again. */
  public void redo() {
    history.redo(now()).ifPresent(this::show);
  }

  /** Puts another project on the bench; there is no way back to this one. */
  public void open(Project opened) {
    history = new History();
    refusal.set(Optional.empty());
    show(new History.State(opened, Selection.NOTHING));
  }

  private History.State now() {
    return new History.State(project(), selection());
  }

  private void show(History.State state) {
    // Listeners of either see nothing chosen that the project has not.
    Selection fitting = state.selection().within(state.project());
    boolean known = fitting.scene().flatMap(project()::scene).isPresent();
    selection.set(known ? fitting.within(project()) : Selection.NOTHING);
    project.set(state.project());
    selection.set(fitting);
    undoName.set(history.undoName());
    redoName.set(history.redoName());
  }
}
