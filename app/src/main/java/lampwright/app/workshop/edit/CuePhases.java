package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.render.TrackRows;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.time.Ratio;

/**
 * Moves the light of cues within them, by their phases. The period of a chase depends on its row of
 * pixels; where the lamps of a track differ in length, the first one decides.
 */
public final class CuePhases {
  private static final int DECIMALS = 6;

  private final Scene scene;
  private final Map<CueRef, Double> periodsMs = new HashMap<>();

  /** Of cues of a scene as it is now; those whose light can't be moved stay as they are. */
  public CuePhases(Rig rig, Scene scene, Collection<CueRef> refs) {
    this.scene = scene;
    for (CueRef ref : refs) {
      periodMs(rig, ref).ifPresent(ms -> periodsMs.put(ref, ms));
    }
  }

  /** Whether the light of a cue can be moved within it. */
  public static boolean moves(Cue cue) {
    // Whether a pattern repeats does not depend on the row, only how soon.
    return cue.pattern().period(List.of()).isPresent() && cue.pattern().startPhase().isPresent();
  }

  /** The scene with the light of the cues later by a time. */
  public Scene later(double ms) {
    Scene changed = scene;
    for (Map.Entry<CueRef, Double> each : periodsMs.entrySet()) {
      double turns = ms / each.getValue();
      changed = CueEdits.each(changed, List.of(each.getKey()), cue -> shifted(cue, turns)).scene();
    }
    return changed;
  }

  private Optional<Double> periodMs(Rig rig, CueRef ref) {
    return ref.in(scene)
        .filter(CuePhases::moves)
        .flatMap(
            cue ->
                TrackRows.of(rig, scene.tracks().get(ref.track())).stream()
                    .findFirst()
                    .flatMap(row -> cue.pattern().period(row)))
        .map(Ratio::doubleValue)
        .filter(ms -> ms > 0);
  }

  private static Cue shifted(Cue cue, double turns) {
    Pattern pattern = cue.pattern();
    BigDecimal phase =
        pattern
            .startPhase()
            .orElseThrow()
            .subtract(BigDecimal.valueOf(turns).setScale(DECIMALS, RoundingMode.HALF_UP));
    BigDecimal whole = phase.setScale(0, RoundingMode.FLOOR);
    return Cue.PATTERN.with(cue, pattern.withPhase(phase.subtract(whole)));
  }
}
