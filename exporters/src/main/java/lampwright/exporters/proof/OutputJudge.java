package lampwright.exporters.proof;

/**
 * Measures the pulses of a driver output. In the middle of each frame, where a new value has had
 * time to come into force, every pulse must have the width that the frame's byte says, of a byte's
 * 255 parts of its period; 0 is never up, 255 never down.
 */
final class OutputJudge {
  private static final int FULL = 255;

  /** Cycles by which a divider with a fraction moves an edge, twice. */
  private static final long ROUNDING = 2;

  private final int number;
  private final int gpio;
  private final int at;
  private final ExpectedFrames expected;
  private final Faults faults;
  private final FrameClock clock;

  private boolean up;
  private boolean driven;
  private long judged;
  private long wrong;

  /** Of the frame that is looked at. */
  private boolean edges;

  private long pulses;
  private long rise = -1;
  private long fall = -1;

  /** The first pulse of a wrong width, and its period; 0 if there is none. */
  private long wrongHigh;

  private long wrongPeriod;

  OutputJudge(
      int number, int gpio, int at, ExpectedFrames expected, Faults faults, FrameClock clock) {
    this.number = number;
    this.gpio = gpio;
    this.at = at;
    this.expected = expected;
    this.faults = faults;
    this.clock = clock;
  }

  int gpio() {
    return gpio;
  }

  int at() {
    return at;
  }

  /** Frames that were judged. */
  long frames() {
    return judged;
  }

  long wrong() {
    return wrong;
  }

  private long begin() {
    return clock.nominal(judged) + clock.periodCycles() / 4;
  }

  private long end() {
    return clock.nominal(judged + 1) - clock.periodCycles() / 16;
  }

  /** The pin changes. */
  void changed(boolean high, boolean nowDriven, long cycle) {
    advance(cycle);
    driven = nowDriven;
    if (high != up) {
      up = high;
      if (clock.opened() && cycle >= begin()) {
        edges = true;
        edge(cycle);
      }
    }
  }

  private void edge(long cycle) {
    if (!up) {
      fall = cycle;
      return;
    }
    if (rise >= 0 && fall > rise) {
      pulse(fall - rise, cycle - rise);
    }
    rise = cycle;
  }

  private void pulse(long high, long period) {
    pulses++;
    int wanted = expected.at(judged, at);
    if (Math.abs(high * FULL - wanted * period) > ROUNDING * FULL) {
      wrongHigh = high;
      wrongPeriod = period;
    }
  }

  /** Time goes on: judges the frames that are over. */
  void advance(long cycle) {
    while (clock.opened() && cycle >= end()) {
      judge();
    }
  }

  private void judge() {
    int wanted = expected.at(judged, at);
    if (!driven) {
      faults.add("output %d, frame %d: pin GP%d is not driven", number, judged, gpio);
      wrong++;
    } else if (!edges) {
      constant(up ? FULL : 0, wanted);
    } else if (wrongPeriod > 0) {
      wrong++;
      faults.add(
          "output %d, frame %d: a pulse of %d in %d cycles, expected duty %d of 255",
          number, judged, wrongHigh, wrongPeriod, wanted);
    } else if (pulses == 0) {
      faults.add("output %d, frame %d: no whole pulse to measure", number, judged);
      wrong++;
    }
    judged++;
    edges = false;
    pulses = 0;
    rise = -1;
    fall = -1;
    wrongHigh = 0;
    wrongPeriod = 0;
  }

  private void constant(int duty, int wanted) {
    if (duty != wanted) {
      wrong++;
      faults.add("output %d, frame %d: duty %d, expected %d", number, judged, duty, wanted);
    }
  }
}
