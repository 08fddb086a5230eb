package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.rig.Input;

/** The values of an input. */
public final class InputSettings {
  private InputSettings() {}

  /** All but its id. */
  public static List<Setting<Input, ?>> all() {
    return ShapeSettings.of(Input.SHAPE)
        .without(Input.ID)
        .own(Input.KIND, FieldSettings.of(Input.KIND, "input.kind"))
        .own(Input.LOST_AFTER_MS, FieldSettings.of(Input.LOST_AFTER_MS, "input.lostAfterMs"))
        .own(Input.CENTRE, FieldSettings.of(Input.CENTRE, "input.centre"))
        .own(Input.ACTIVE_LOW, FieldSettings.of(Input.ACTIVE_LOW, "input.activeLow"))
        .list();
  }
}
