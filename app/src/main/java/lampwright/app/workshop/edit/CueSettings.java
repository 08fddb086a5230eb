package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.scene.Cue;

/** The values of a cue. */
public final class CueSettings {
  private CueSettings() {}

  /** When it is. */
  public static List<Setting<Cue, ?>> time() {
    return List.of(
        FieldSettings.of(Cue.START_MS),
        FieldSettings.of(Cue.LENGTH_MS),
        FieldSettings.of(Cue.FADE_IN_MS),
        FieldSettings.of(Cue.FADE_OUT_MS));
  }

  /** The kind of its pattern. */
  public static Setting<Cue, String> kind() {
    return new Setting<>(
        "kind",
        new Kind.Choice<>("kind", Patterns.kinds(), k -> k),
        cue -> cue.pattern().kind(),
        (cue, kind) ->
            cue.pattern().kind().equals(kind)
                ? cue
                : Cue.PATTERN.with(cue, PatternEdits.turned(cue.pattern(), kind)));
  }

  /** How it meets the light under it. */
  public static Setting<Cue, ?> blend() {
    return FieldSettings.of(Cue.BLEND);
  }

  /** A setting of the pattern as one of its cue. */
  public static <V> Setting<Cue, V> ofPattern(Setting<Pattern, V> setting) {
    return setting.inside(Cue::pattern, Cue.PATTERN::with);
  }
}
