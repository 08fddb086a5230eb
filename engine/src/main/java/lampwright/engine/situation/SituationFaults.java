package lampwright.engine.situation;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lampwright.engine.check.Checks;
import lampwright.engine.check.Fault;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.scene.Scene;

/** What can be wrong between situations and what they name. */
public final class SituationFaults {
  private final Checks checks = Checks.of("project");
  private final Map<String, InputKind> inputs = new HashMap<>();
  private final Set<String> earlier = new HashSet<>();

  private SituationFaults(List<Input> inputs) {
    inputs.forEach(input -> this.inputs.putIfAbsent(input.id(), input.kind()));
  }

  /** The faults between these parts, with paths such as {@code situations[1].all[0].input}. */
  public static List<Fault> find(
      List<Input> inputs, List<Scene> scenes, List<Situation> situations) {
    SituationFaults found = new SituationFaults(inputs);
    found.checks.uniqueIds("situations", situations, Situation::id);
    Set<String> sceneIds = scenes.stream().map(Scene::id).collect(Collectors.toSet());
    for (int i = 0; i < situations.size(); i++) {
      found.situation("situations[" + i + "]", situations.get(i), sceneIds);
    }
    return found.checks.faults();
  }

  private void situation(String path, Situation situation, Set<String> sceneIds) {
    situation
        .scene()
        .filter(id -> !sceneIds.contains(id))
        .ifPresent(id -> checks.add(path + ".scene", id, "must be the id of a scene"));
    Trigger trigger = situation.trigger();
    for (int i = 0; i < trigger.conditions().size(); i++) {
      Criterion criterion = trigger.conditions().get(i).criterion();
      String at = path + "." + trigger.join().key() + "[" + i + "]";
      criterion.input().ifPresent(id -> input(at + ".input", id, criterion));
      criterion
          .situation()
          .filter(id -> !earlier.contains(id))
          .ifPresent(
              id ->
                  checks.add(
                      at + ".situation", id, "must be the id of a situation earlier in the list"));
    }
    earlier.add(situation.id());
  }

  private void input(String path, String id, Criterion criterion) {
    InputKind kind = inputs.get(id);
    Optional<InputKind> needed = needed(criterion);
    if (kind == null) {
      checks.add(path, id, "must be the id of an input of this rig");
    } else if (needed.isPresent() && kind != needed.get()) {
      checks.add(
          path,
          id,
          "must be the id of a " + needed.get().key() + " input with " + criterion.form());
    }
  }

  // A switch may be asked whether it is lost: it never is.
  private static Optional<InputKind> needed(Criterion criterion) {
    if (criterion instanceof Criterion.Width) {
      return Optional.of(InputKind.SERVO_PULSE);
    }
    return criterion instanceof Criterion.SwitchIs
        ? Optional.of(InputKind.SWITCH)
        : Optional.empty();
  }
}
