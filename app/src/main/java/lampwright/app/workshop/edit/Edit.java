package lampwright.app.workshop.edit;

import java.util.Optional;
import java.util.function.UnaryOperator;
import lampwright.engine.document.Project;

/**
 * One change of a project.
 *
 * @param name what was done, for the list of what can be undone: {@code Move cue}
 * @param change gives the changed project; may throw {@link
 *     lampwright.engine.check.InvalidModelException} where the model refuses it
 * @param gesture edits in a row with the same gesture, such as the steps of one drag, are undone as
 *     one
 */
public record Edit(String name, UnaryOperator<Project> change, Optional<Object> gesture) {
  public static Edit of(String name, UnaryOperator<Project> change) {
    return new Edit(name, change, Optional.empty());
  }

  /** The same as a step of a gesture. */
  public Edit within(Object newGesture) {
    return new Edit(name, change, Optional.of(newGesture));
  }
}
