package lampwright.exporters.packed.encode;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/**
 * Frames at which the light of a lamp becomes another one: where to cut is tried there. What is
 * played never depends on them.
 *
 * @param cues frames at which a cue begins or has ended, ascending
 * @param fades those, and frames at which a fade has ended or begins, ascending
 */
public record CueBorders(List<Integer> cues, List<Integer> fades) {
  /** Nothing is known. */
  static final CueBorders NONE = new CueBorders(List.of(), List.of());

  private static final BigDecimal SECOND_MS = BigDecimal.valueOf(1000);

  /** Copies the lists. */
  public CueBorders {
    cues = List.copyOf(cues);
    fades = List.copyOf(fades);
  }

  /** The borders of a lamp's cues, those of all its tracks. */
  static CueBorders of(Scene scene, String lamp) {
    TreeSet<Integer> cues = new TreeSet<>();
    TreeSet<Integer> fades = new TreeSet<>();
    for (Track track : scene.tracks()) {
      if (track.lamps().contains(lamp)) {
        for (Cue cue : track.cues()) {
          cues.add(frame(scene, cue.startMs()));
          cues.add(frame(scene, cue.endMs()));
          fades.add(frame(scene, cue.startMs().add(cue.fadeInMs())));
          fades.add(frame(scene, cue.endMs().subtract(cue.fadeOutMs())));
        }
      }
    }
    fades.addAll(cues);
    return new CueBorders(new ArrayList<>(cues), new ArrayList<>(fades));
  }

  /** Those of lamps that are coded as one. */
  static CueBorders all(List<CueBorders> each) {
    TreeSet<Integer> cues = new TreeSet<>();
    TreeSet<Integer> fades = new TreeSet<>();
    for (CueBorders one : each) {
      cues.addAll(one.cues);
      fades.addAll(one.fades);
    }
    return new CueBorders(new ArrayList<>(cues), new ArrayList<>(fades));
  }

  /** The first frame at or after a time, or the frame behind the last. */
  private static int frame(Scene scene, BigDecimal ms) {
    BigDecimal frame =
        ms.multiply(scene.framesPerSecond()).divide(SECOND_MS, 0, RoundingMode.CEILING);
    return frame.max(BigDecimal.ZERO).min(BigDecimal.valueOf(scene.frameCount())).intValueExact();
  }
}
