package lampwright.engine.render;

import java.util.Arrays;
import java.util.List;
import lampwright.engine.time.Moment;

/**
 * The cues that cover a frame, the lowest first. They are arranged anew only when a cue begins,
 * ends or is done with fading; what an opaque cue hides is not painted, and what a cue has laid
 * where no other one does stays for as long as the cue would lay the same. Asked for frames in
 * rising order, or rewound in between.
 */
final class Layers {
  private final TrackPlayer[] tracks;
  private final boolean[] changed;
  private final boolean[] hidden;
  private final boolean[] covered;
  private final boolean[] shared;
  private CuePlayer[] cues = new CuePlayer[16];
  // The frame at which each has to be played again. In an array of their own: of a thousand cues
  // most are passed over, and reading each of them from memory would take most of the time.
  private long[] due = new long[cues.length];
  private int count;
  private long arrangedUntil;

  /** Runs of shared packages: the first, and the one behind the last, of each. */
  private final int[] runs;

  private int runCount;

  /**
   * @param tracks the lowest first
   * @param changed of all packages, those whose drives become others after all cues are laid
   */
  Layers(List<TrackPlayer> tracks, boolean[] changed) {
    this.tracks = tracks.toArray(TrackPlayer[]::new);
    this.changed = changed;
    this.hidden = new boolean[changed.length];
    this.covered = new boolean[changed.length];
    this.shared = new boolean[changed.length];
    this.runs = new int[changed.length + 1];
  }

  /** Makes ready to be asked for any frame again. */
  void rewind() {
    for (TrackPlayer track : tracks) {
      track.rewind();
    }
    arrangedUntil = 0;
  }

  /**
   * Lays the light of all cues that cover a frame; the light has what this left of it before.
   *
   * @return how many cues were played for it; the others' light is there already
   */
  int play(long frame, Moment timeMs, Light light, RenderWatcher watcher) {
    // Who watches is told of every cue, and what is under it.
    boolean all = watcher != RenderWatcher.NOBODY;
    boolean anew = frame >= arrangedUntil;
    if (anew) {
      arrange(frame);
    }
    if (anew || all) {
      light.darken();
    } else {
      for (int i = 0; i < runCount; i += 2) {
        light.darken(runs[i], runs[i + 1]);
      }
    }
    int played = 0;
    for (int i = 0; i < count; i++) {
      if (due[i] <= frame || all) {
        due[i] = cues[i].play(frame, timeMs, light, watcher);
        played++;
      }
    }
    light.addSteps(count);
    return played;
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
    share();
  }

  /** Finds the packages that more than one cue lays light on, or that change afterwards. */
  private void share() {
    Arrays.fill(covered, false);
    System.arraycopy(changed, 0, shared, 0, shared.length);
    for (int i = 0; i < count; i++) {
      cues[i].markSeen(covered, shared);
    }
    for (int i = 0; i < count; i++) {
      cues[i].setApart(shared);
    }
    for (int i = 0; i < count; i++) {
      if (!cues[i].isApart()) {
        cues[i].markSeen(covered, shared);
      }
    }
    runCount = 0;
    for (int at = 0; at < shared.length; at++) {
      if (shared[at] != (at > 0 && shared[at - 1])) {
        runs[runCount++] = at;
      }
    }
    if (runCount % 2 > 0) {
      runs[runCount++] = shared.length;
    }
  }

  /** Puts a cue on top. */
  void add(CuePlayer cue) {
    if (count == cues.length) {
      cues = Arrays.copyOf(cues, 2 * count);
      due = Arrays.copyOf(due, 2 * count);
    }
    due[count] = 0;
    cues[count++] = cue;
  }

  /** Hears of a frame from which on the cues may have to be arranged in another way. */
  void changeAt(long frame) {
    arrangedUntil = Math.min(arrangedUntil, frame);
  }
}
