package lampwright.engine.render;

import java.math.BigDecimal;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.engine.time.Ratio;

/** Which frames an edit of a scene may change: those that a cue covers which is not in both. */
final class ChangedFrames {
  private final FrameClock clock;
  private final int frameCount;
  private final BitSet changed = new BitSet();

  private ChangedFrames(BigDecimal framesPerSecond, int frameCount) {
    this.clock = new FrameClock(framesPerSecond);
    this.frameCount = frameCount;
  }

  /**
   * The frames of a scene that may differ from those of the same number of another one, those that
   * the other does not have included. Empty where any frame may: another rig or rate, or frames
   * that rest on others.
   */
  // Another rig is seldom equal, and to find that out takes long.
  @SuppressWarnings("ReferenceEquality")
  static Optional<BitSet> between(FrameTable before, FrameTable after) {
    Scene old = before.scene();
    Scene now = after.scene();
    if (before.layout().rig() != after.layout().rig()
        || old.framesPerSecond().compareTo(now.framesPerSecond()) != 0
        || !before.seeksAtOnce()
        || !after.seeksAtOnce()) {
      return Optional.empty();
    }
    ChangedFrames found = new ChangedFrames(now.framesPerSecond(), after.frameCount());
    found.tracks(old.tracks(), now.tracks());
    if (before.frameCount() < after.frameCount()) {
      found.changed.set(before.frameCount(), after.frameCount());
    }
    return Optional.of(found.changed);
  }

  private void tracks(List<Track> old, List<Track> now) {
    int first = alikeAtFront(old, now);
    int behind = alikeAtBack(old, now, first);
    List<Track> oldPart = old.subList(first, old.size() - behind);
    List<Track> newPart = now.subList(first, now.size() - behind);
    if (oldPart.size() == 1
        && newPart.size() == 1
        && differInCues(oldPart.get(0), newPart.get(0))) {
      cues(oldPart.get(0).cues(), newPart.get(0).cues());
      return;
    }
    oldPart.forEach(track -> track.cues().forEach(this::mark));
    newPart.forEach(track -> track.cues().forEach(this::mark));
  }

  private static boolean differInCues(Track old, Track now) {
    return Track.CUES.with(old, now.cues()).equals(now);
  }

  private void cues(List<Cue> old, List<Cue> now) {
    int first = alikeAtFront(old, now);
    int behind = alikeAtBack(old, now, first);
    old.subList(first, old.size() - behind).forEach(this::mark);
    now.subList(first, now.size() - behind).forEach(this::mark);
  }

  private void mark(Cue cue) {
    long from = clock.firstAtOrAfter(Ratio.of(cue.startMs()));
    long to = clock.firstAtOrAfter(Ratio.of(cue.endMs()));
    if (from < frameCount) {
      changed.set((int) Math.max(0, from), (int) Math.min(frameCount, Math.max(from, to)));
    }
  }

  private static <T> int alikeAtFront(List<T> old, List<T> now) {
    int most = Math.min(old.size(), now.size());
    int count = 0;
    while (count < most && old.get(count).equals(now.get(count))) {
      count++;
    }
    return count;
  }

  private static <T> int alikeAtBack(List<T> old, List<T> now, int atFront) {
    int most = Math.min(old.size(), now.size()) - atFront;
    int count = 0;
    while (count < most
        && old.get(old.size() - 1 - count).equals(now.get(now.size() - 1 - count))) {
      count++;
    }
    return count;
  }
}
