package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Times;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;

/** The values of a cue. */
public final class CueSettings {
  private static final Kind.Amount MS = Kind.Amount.of("ms", 0, Times.MAX_MS, 10);

  private CueSettings() {}

  /** When it is. */
  public static List<Setting<Cue, ?>> time() {
    return List.of(
        new Setting<>("startMs", MS, Cue::startMs, Cue::withStartMs),
        new Setting<>(
            "lengthMs",
            Kind.Amount.of("ms", 1, Times.MAX_MS, 10),
            Cue::lengthMs,
            Cue::withLengthMs),
        new Setting<>("fadeInMs", MS, Cue::fadeInMs, Cue::withFadeInMs),
        new Setting<>("fadeOutMs", MS, Cue::fadeOutMs, Cue::withFadeOutMs));
  }

  /** The kind of its pattern. */
  public static Setting<Cue, String> kind() {
    return new Setting<>(
        "kind",
        new Kind.Choice<>("kind", FreshPatterns.kinds(), k -> k),
        cue -> cue.pattern().kind(),
        (cue, kind) ->
            cue.pattern().kind().equals(kind)
                ? cue
                : cue.withPattern(FreshPatterns.turned(cue.pattern(), kind)));
  }

  /** How it meets the light under it. */
  public static Setting<Cue, Blend> blend() {
    return new Setting<>(
        "blend",
        new Kind.Choice<>("blend", List.of(Blend.values()), Blend::key),
        Cue::blend,
        Cue::withBlend);
  }

  /** A setting of the pattern as one of its cue. */
  public static <V> Setting<Cue, V> ofPattern(Setting<Pattern, V> setting) {
    return setting.inside(Cue::pattern, Cue::withPattern);
  }
}
