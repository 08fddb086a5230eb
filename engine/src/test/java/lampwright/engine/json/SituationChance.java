package lampwright.engine.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criterion;
import lampwright.engine.situation.Join;
import lampwright.engine.situation.Situation;
import lampwright.engine.situation.Trigger;

/** Random situations that name what there is. */
final class SituationChance {
  private final Chance chance;
  private final List<Input> inputs;
  private final List<String> scenes;

  SituationChance(Chance chance, List<Input> inputs, List<String> scenes) {
    this.chance = chance;
    this.inputs = inputs;
    this.scenes = scenes;
  }

  List<Situation> situations() {
    List<Situation> list = new ArrayList<>();
    int count = chance.whole(0, 4);
    for (int i = 0; i < count; i++) {
      String id = "t" + i + chance.id("-");
      list.add(
          new RandomValues(chance, shape -> true)
              .with(Situation.ID, () -> id)
              .with(Situation.SCENE, this::scene)
              .with(Situation.TRIGGER, () -> trigger(list))
              .record(Situation.SHAPE));
    }
    return list;
  }

  private Optional<String> scene() {
    return scenes.isEmpty() || chance.once(4) ? Optional.empty() : Optional.of(chance.of(scenes));
  }

  private Trigger trigger(List<Situation> earlier) {
    if (inputs.isEmpty() && earlier.isEmpty()) {
      return Trigger.ALWAYS;
    }
    return new Trigger(chance.of(Join.values()), chance.list(0, 3, () -> condition(earlier)));
  }

  private Condition condition(List<Situation> earlier) {
    if (inputs.isEmpty() || (!earlier.isEmpty() && chance.flag())) {
      String other = chance.of(earlier).id();
      return Condition.of(
          chance.flag()
              ? new Criterion.SituationIs(other, chance.flag())
              : new Criterion.EndedWithin(other, chance.decimal("0", "2000")));
    }
    Input input = chance.of(inputs);
    return new Condition(
        input.kind() == InputKind.SWITCH
            ? new Criterion.SwitchIs(input.id(), chance.flag())
            : channel(input.id()),
        chance.once(4) ? OptionalInt.of(chance.whole(1, 3)) : OptionalInt.empty());
  }

  private Criterion channel(String id) {
    int width = chance.whole(800, 2200);
    int hysteresis = chance.flag() ? 20 : chance.whole(0, 300);
    return switch (chance.whole(0, 3)) {
      case 0 -> new Criterion.Above(id, width, hysteresis);
      case 1 -> new Criterion.Below(id, width, hysteresis);
      case 2 -> new Criterion.Between(id, width, chance.whole(width, 2200), hysteresis);
      default -> new Criterion.Lost(id);
    };
  }
}
