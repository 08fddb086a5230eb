package lampwright.engine.render;

import java.util.Arrays;
import java.util.List;
import lampwright.engine.time.Moment;

/**
 * The cues that cover a frame, the lowest first. They are arranged anew only when a cue begins,
 * ends or is done with fading; what an opaque cue hides is not painted. Asked for frames in rising
 * order, or rewound in between.
 */
final class Layers {
  private final TrackPlayer[] tracks;
  private final boolean[] hidden;
  private CuePlayer[] cues = new CuePlayer[16];
  private int count;
  private long arrangedUntil;

  /**
   * @param tracks the lowest first
   * @param packages how many the rig has
   */
  Layers(List<TrackPlayer> tracks, int packages) {
    this.tracks = tracks.toArray(TrackPlayer[]::new);
    this.hidden = new boolean[packages];
  }

  /** Makes ready to be asked for any frame again. */
  void rewind() {
    for (TrackPlayer track : tracks) {
      track.rewind();
    }
    arrangedUntil = 0;
  }

  /** Lays the light of all cues that cover a frame. */
  void play(long frame, Moment timeMs, Light light, RenderWatcher watcher) {
    if (frame >= arrangedUntil) {
      arrange(frame);
    }
    for (int i = 0; i < count; i++) {
      cues[i].play(timeMs, light, watcher);
      light.addStep();
    }
  }

  private void arrange(long frame) {
    count = 0;
    arrangedUntil = Long.MAX_VALUE;
    for (TrackPlayer track : tracks) {
      track.gather(frame, this);
    }
    Arrays.fill(hidden, false);
    for (int i = count - 1; i >= 0; i--) {
      cues[i].arrange(frame, hidden);
    }
  }

  /** Puts a cue on top. */
  void add(CuePlayer cue) {
    if (count == cues.length) {
      cues = Arrays.copyOf(cues, 2 * count);
    }
    cues[count++] = cue;
  }

  /** Hears of a frame from which on the cues may have to be arranged in another way. */
  void changeAt(long frame) {
    arrangedUntil = Math.min(arrangedUntil, frame);
  }
}
