package lampwright.app.workshop.edit;

import java.util.List;
import java.util.OptionalDouble;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.pattern.Keyframe;

/** The values of a keyframe. */
public final class KeyframeSettings {
  private KeyframeSettings() {}

  /** In the order of their columns: time, level, colour, and how it goes on. */
  public static List<Setting<Keyframe, ?>> all() {
    return List.of(
        FieldSettings.of(Keyframe.AT_MS, "keyframe.atMs"),
        level(),
        FieldSettings.of(Keyframe.COLOUR, "keyframe.colour"),
        FieldSettings.of(Keyframe.EASING, "keyframe.easing"));
  }

  // One that is put in begins with full light.
  private static Setting<Keyframe, ?> level() {
    OptionalType<Double, OptionalDouble> type = OptionalType.ofNumber(NumberType.SHARE);
    return FieldForm.of(type.some())
        .beginningWith(1.0)
        .<OptionalDouble>optional(type.open(), type.close())
        .setting("keyframe.level", Keyframe.LEVEL::get, Keyframe.LEVEL::with);
  }
}
