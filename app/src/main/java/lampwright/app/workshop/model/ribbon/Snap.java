package lampwright.app.workshop.model.ribbon;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Optional;
import java.util.TreeSet;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.CueRef;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/**
 * What an edge that is dragged is drawn to: edges of other cues, markers, the playhead, the beat,
 * the scene's end; and frames, wherever nothing else is near.
 */
public final class Snap {
  private final Scene scene;
  private final TreeSet<BigDecimal> marks = new TreeSet<>();
  private final Optional<BigDecimal> beatMs;
  private final boolean frames;

  private Snap(Scene scene, Optional<BigDecimal> beatMs, boolean frames) {
    this.scene = scene;
    this.beatMs = beatMs;
    this.frames = frames;
  }

  /** Draws to nothing; times are cut to thousandths of a millisecond. */
  public static Snap off(Scene scene) {
    return new Snap(scene, Optional.empty(), false);
  }

  /**
   * Draws to frames and marks.
   *
   * @param moving the cues that are dragged, whose edges are no marks
   * @param playheadMs where the playhead is
   * @param beatMs time between beats, if there is one
   */
  public static Snap on(
      Scene scene, Collection<CueRef> moving, BigDecimal playheadMs, Optional<BigDecimal> beatMs) {
    Snap snap = new Snap(scene, beatMs, true);
    snap.marks.add(BigDecimal.ZERO);
    snap.marks.add(playheadMs);
    snap.marks.add(scene.lengthMs());
    scene.markers().forEach(marker -> snap.marks.add(marker.atMs()));
    for (int t = 0; t < scene.tracks().size(); t++) {
      Track track = scene.tracks().get(t);
      for (int c = 0; c < track.cues().size(); c++) {
        if (!moving.contains(new CueRef(t, c))) {
          Cue cue = track.cues().get(c);
          snap.marks.add(cue.startMs());
          snap.marks.add(cue.endMs());
        }
      }
    }
    return snap;
  }

  /**
   * Where an edge at {@code ms} goes.
   *
   * @param reachMs how near a mark must be
   */
  public BigDecimal edge(double ms, double reachMs) {
    BigDecimal at = thousandths(Math.max(0, ms));
    if (!frames) {
      return at;
    }
    BigDecimal reach = thousandths(reachMs);
    return mark(at)
        .filter(mark -> mark.subtract(at).abs().compareTo(reach) <= 0)
        .orElseGet(() -> CueEdits.frameMs(scene, CueEdits.nearestFrame(scene, at)));
  }

  private Optional<BigDecimal> mark(BigDecimal at) {
    BigDecimal below = marks.floor(at);
    BigDecimal above = marks.ceiling(at);
    Optional<BigDecimal> nearest = nearer(Optional.ofNullable(below), above, at);
    if (beatMs.isPresent()) {
      BigDecimal beat =
          at.divide(beatMs.get(), 0, RoundingMode.HALF_UP)
              .multiply(beatMs.get())
              .setScale(3, RoundingMode.FLOOR);
      return nearer(nearest, beat, at);
    }
    return nearest;
  }

  private static Optional<BigDecimal> nearer(
      Optional<BigDecimal> one,
      @org.jspecify.annotations.Nullable BigDecimal other,
      BigDecimal at) {
    if (other == null) {
      return one;
    }
    return one.filter(o -> o.subtract(at).abs().compareTo(other.subtract(at).abs()) <= 0)
        .or(() -> Optional.of(other));
  }

  private static BigDecimal thousandths(double ms) {
    return BigDecimal.valueOf(ms).setScale(3, RoundingMode.HALF_UP);
  }
}
