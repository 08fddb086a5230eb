package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.rig.Rig;

/** What is done to inputs; conditions that name them follow. */
public final class InputEdits {
  private InputEdits() {}

  /** Adds a channel. */
  public static Project add(Project project) {
    List<Input> inputs = new ArrayList<>(project.rig().inputs());
    inputs.add(
        Input.of(
            Projects.freeId("input", inputs.stream().map(Input::id).toList()),
            InputKind.SERVO_PULSE));
    return with(project, inputs);
  }

  /** An input by its id. */
  public static Optional<Input> find(Project project, String id) {
    return project.rig().inputs().stream().filter(i -> i.id().equals(id)).findFirst();
  }

  /** Changes one. */
  public static Project change(Project project, String id, UnaryOperator<Input> change) {
    return with(
        project,
        project.rig().inputs().stream().map(i -> i.id().equals(id) ? change.apply(i) : i).toList());
  }

  /** Gives one another id, in conditions too. */
  public static Project rename(Project project, String from, String to) {
    List<Input> inputs =
        project.rig().inputs().stream()
            .map(i -> i.id().equals(from) ? Input.ID.with(i, to) : i)
            .toList();
    // At once: between the two conditions would name what is not there.
    return Project.SHAPE
        .draft(project)
        .set(Project.RIG, Rig.INPUTS.with(project.rig(), inputs))
        .set(
            Project.SITUATIONS,
            project.situations().stream()
                .map(
                    s ->
                        SituationEdits.withCriteria(
                            s,
                            c ->
                                c.input().equals(Optional.of(from))
                                    ? ConditionKind.of(c).make(to, c)
                                    : c))
                .toList())
        .make();
  }

  /** Removes one; refused by the model while conditions name it. */
  public static Project remove(Project project, String id) {
    return with(project, project.rig().inputs().stream().filter(i -> !i.id().equals(id)).toList());
  }

  private static Project with(Project project, List<Input> inputs) {
    return Project.RIG.with(project, Rig.INPUTS.with(project.rig(), inputs));
  }
}
