package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.rig.InputKind;
import lampwright.engine.situation.Criterion;

/**
 * What a condition looks at.
 *
 * @param id of the input or situation
 */
public record ConditionSource(Sort sort, String id) {
  /** The sorts of what conditions look at. */
  public enum Sort {
    CHANNEL,
    SWITCH,
    SITUATION
  }

  /** What the conditions of a situation may look at. */
  public static List<ConditionSource> of(Project project, String situation) {
    List<ConditionSource> all = new ArrayList<>();
    project
        .rig()
        .inputs()
        .forEach(
            input ->
                all.add(
                    new ConditionSource(
                        input.kind() == InputKind.SWITCH ? Sort.SWITCH : Sort.CHANNEL,
                        input.id())));
    SituationEdits.visible(project, situation)
        .forEach(id -> all.add(new ConditionSource(Sort.SITUATION, id)));
    return all;
  }

  /** Whether a condition looks at this. */
  public boolean isOf(Criterion criterion) {
    return (sort == Sort.SITUATION ? criterion.situation() : criterion.input())
        .filter(id::equals)
        .isPresent();
  }
}
