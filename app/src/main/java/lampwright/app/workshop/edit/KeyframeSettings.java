package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.pattern.Keyframe;

/** The values of a keyframe. */
public final class KeyframeSettings {
  private KeyframeSettings() {}

  /** In the order of their columns: time, level, colour, and how it goes on. */
  public static List<Setting<Keyframe, ?>> all() {
    return List.of(
        FieldSettings.of(Keyframe.AT_MS, "keyframe.atMs"),
        FieldSettings.of(Keyframe.LEVEL, "keyframe.level"),
        FieldSettings.of(Keyframe.COLOUR, "keyframe.colour"),
        FieldSettings.of(Keyframe.EASING, "keyframe.easing"));
  }
}
