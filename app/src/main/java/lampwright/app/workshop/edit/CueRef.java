package lampwright.app.workshop.edit;

import java.util.Comparator;
import java.util.Optional;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;

/**
 * Where a cue stands in its scene.
 *
 * @param track index of its track
 * @param cue index in the track's list
 */
public record CueRef(int track, int cue) implements Comparable<CueRef> {
  private static final Comparator<CueRef> ORDER =
      Comparator.comparingInt(CueRef::track).thenComparingInt(CueRef::cue);

  /** The cue, if the scene has it. */
  public Optional<Cue> in(Scene scene) {
    return track < scene.tracks().size() && cue < scene.tracks().get(track).cues().size()
        ? Optional.of(scene.tracks().get(track).cues().get(cue))
        : Optional.empty();
  }

  @Override
  public int compareTo(CueRef other) {
    return ORDER.compare(this, other);
  }
}
