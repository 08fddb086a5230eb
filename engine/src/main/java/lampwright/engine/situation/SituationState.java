package lampwright.engine.situation;

import java.util.ArrayList;
import java.util.List;

/** One situation as it is in a frame. */
final class SituationState {
  private final List<Probe> conditions;
  private final boolean[] on;
  private final boolean any;
  private final int afterFrames;
  private final int lingerFrames;
  private final boolean toggle;

  private boolean joined;
  private int joinedFor;
  private boolean held;
  private boolean everHeld;
  private int sinceHeld;
  private boolean active;
  private int sinceOnset;
  private boolean everEnded;
  private int sinceEnd;

  SituationState(Situation situation, List<Probe> conditions, ShowClock clock) {
    this.conditions = List.copyOf(conditions);
    this.on = new boolean[conditions.size()];
    this.any = situation.trigger().join() == Join.ANY;
    this.afterFrames = clock.ceiling(situation.afterMs());
    this.lingerFrames = clock.ceiling(situation.lingerMs());
    this.toggle = situation.toggle();
  }

  /** Works out the next frame; true if it begins or ends in it. */
  boolean frame() {
    boolean heldBefore = held;
    boolean activeBefore = active;
    held = hold(join());
    if (toggle) {
      active ^= held && !heldBefore;
    } else {
      everHeld |= held;
      sinceHeld = held ? 0 : Counter.next(sinceHeld);
      active = held || (everHeld && sinceHeld < lingerFrames);
    }
    sinceOnset = activeBefore ? sinceOnset + 1 : 0;
    boolean ends = activeBefore && !active;
    everEnded |= ends;
    sinceEnd = ends ? 0 : Counter.next(sinceEnd);
    return active != activeBefore;
  }

  // Each at every frame: one that isn't looked at would miss taps.
  private boolean join() {
    int count = 0;
    for (int i = 0; i < on.length; i++) {
      on[i] = conditions.get(i).frame();
      count += on[i] ? 1 : 0;
    }
    return any ? count > 0 : count == on.length;
  }

  private boolean hold(boolean now) {
    joinedFor = joined ? Counter.next(joinedFor) : 0;
    joined = now;
    return now && joinedFor >= afterFrames;
  }

  boolean active() {
    return active;
  }

  /** Frames since it became active, 0 in the frame in which it does. */
  int sinceOnset() {
    return sinceOnset;
  }

  /** Whether it has ended, and so few frames ago; 0 in the first in which it is not active. */
  boolean endedWithin(int frames) {
    return !active && everEnded && sinceEnd < frames;
  }

  /** What it did in this frame, if it has begun or ended in it. */
  Change change(int frame, Situation situation) {
    Change.Cause cause =
        toggle
            ? Change.Cause.TOGGLED
            : active
                ? Change.Cause.CONDITIONS_HOLD
                : lingerFrames > 0 ? Change.Cause.LINGER_OVER : Change.Cause.CONDITIONS_ENDED;
    boolean deciding = toggle || active;
    List<Integer> deciders = new ArrayList<>();
    for (int i = 0; i < on.length; i++) {
      if (on[i] == deciding) {
        deciders.add(i);
      }
    }
    return new Change(frame, situation, active, cause, deciders);
  }
}
