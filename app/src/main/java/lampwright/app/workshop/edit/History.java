package lampwright.app.workshop.edit;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import lampwright.engine.document.Project;

/** Every state of the project since it was opened, and where in them the bench stands. */
public final class History {
  /**
   * A state of the bench.
   *
   * @param project as it was
   * @param selection what was selected in it
   */
  public record State(Project project, Selection selection) {}

  private record Step(String name, State before, Optional<Object> gesture) {}

  private final Deque<Step> undo = new ArrayDeque<>();
  private final Deque<Step> redo = new ArrayDeque<>();
  private boolean gestureEnded = true;

  /** Notes that an edit was made. */
  public void did(Edit edit, State before) {
    redo.clear();
    boolean goesOn =
        !gestureEnded
            && edit.gesture().isPresent()
            && !undo.isEmpty()
            && undo.peek().gesture().equals(edit.gesture());
    if (!goesOn) {
      undo.push(new Step(edit.name(), before, edit.gesture()));
    }
    gestureEnded = edit.gesture().isEmpty();
  }

  /** The next edit is a step of its own, whatever its gesture. */
  public void endGesture() {
    gestureEnded = true;
  }

  /**
   * Takes the gesture that goes on back, as if it had not been.
   *
   * @return the state before it; empty if none goes on
   */
  public Optional<State> dropGesture() {
    if (gestureEnded || undo.isEmpty() || undo.peek().gesture().isEmpty()) {
      return Optional.empty();
    }
    endGesture();
    return Optional.of(undo.pop().before());
  }

  /** What undo would take back. */
  public Optional<String> undoName() {
    return Optional.ofNullable(undo.peek()).map(Step::name);
  }

  /** What redo would bring back. */
  public Optional<String> redoName() {
    return Optional.ofNullable(redo.peek()).map(Step::name);
  }

  /** The state before the last edit; empty if there is none. */
  public Optional<State> undo(State now) {
    return exchange(undo, redo, now);
  }

  /** The state after the edit undone last; empty if there is none. */
  public Optional<State> redo(State now) {
    return exchange(redo, undo, now);
  }

  private Optional<State> exchange(Deque<Step> from, Deque<Step> to, State now) {
    endGesture();
    if (from.isEmpty()) {
      return Optional.empty();
    }
    Step step = from.pop();
    to.push(new Step(step.name(), now, Optional.empty()));
    return Optional.of(step.before());
  }
}
