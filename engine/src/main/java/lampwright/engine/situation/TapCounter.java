package lampwright.engine.situation;

import java.math.BigDecimal;

/** Counts short spells of what a probe looks at; on for one frame when there were so many. */
final class TapCounter implements Probe {
  private static final BigDecimal LONGEST_MS = BigDecimal.valueOf(400);
  private static final BigDecimal PAUSE_MS = BigDecimal.valueOf(500);

  /** More than any condition asks for: a count that stays there is none that it asks for. */
  private static final int MANY = 255;

  private final Probe probe;
  private final int taps;
  private final int longestFrames;
  private final int pauseFrames;
  private boolean before;
  private int spell;
  private int pause;
  private int count;

  TapCounter(Probe probe, int taps, ShowClock clock) {
    this.probe = probe;
    this.taps = taps;
    this.longestFrames = clock.floor(LONGEST_MS);
    this.pauseFrames = clock.ceiling(PAUSE_MS);
  }

  @Override
  public boolean frame() {
    boolean now = probe.frame();
    boolean counted = false;
    if (now) {
      spell = before ? Counter.next(spell) : 1;
    } else {
      if (before) {
        pause = 0;
        count = spell <= longestFrames ? Math.min(count + 1, MANY) : 0;
      } else {
        pause = Counter.next(pause);
      }
      if (count != 0 && pause >= pauseFrames) {
        counted = count == taps;
        count = 0;
      }
    }
    before = now;
    return counted;
  }
}
