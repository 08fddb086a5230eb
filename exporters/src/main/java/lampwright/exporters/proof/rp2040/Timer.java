package lampwright.exporters.proof.rp2040;

import lampwright.engine.time.Ratio;

/**
 * The timer with its four alarms, counting ticks that the watchdog makes of the reference clock.
 */
final class Timer extends Block implements Clocked {
  private static final int ALARMS = 4;

  private final Watchdog watchdog;
  private final int[] alarm = new int[ALARMS];
  private final long[] dueAt = new long[ALARMS];
  private int armed;
  private int raised;
  private int enabled;
  private int forced;
  private int latchedHigh;

  /** Ticks counted until {@code since}, and how many come in a cycle of the system clock. */
  private long count;

  private long since;
  private long ticks;
  private long perCycles = 1;

  Timer(Rp2040 chip) {
    super(chip, "TIMER", Resets.TIMER);
    watchdog = new Watchdog(chip, this);
    reads("TIMERAWL", () -> (int) time());
    reads("TIMERAWH", () -> (int) (time() >>> 32));
    reads("TIMELR", this::latch);
    reads("TIMEHR", () -> latchedHigh);
    for (int i = 0; i < ALARMS; i++) {
      int number = i;
      reads("ALARM" + i, () -> alarm[number]);
      writes("ALARM" + i, value -> arm(number, value));
    }
    reads("ARMED", () -> armed);
    writes("ARMED", value -> armed &= ~value);
    reads("INTR", () -> raised);
    writes("INTR", value -> raise(raised & ~value));
    reads("INTE", () -> enabled);
    writes("INTE", value -> enable(value));
    reads("INTF", () -> forced);
    writes("INTF", value -> force(value));
    reads("INTS", this::status);
    aliased("INTE", "INTF");
  }

  Watchdog watchdog() {
    return watchdog;
  }

  @Override
  void reset() {
    fill(alarm, 0);
    armed = 0;
    enabled = 0;
    forced = 0;
    latchedHigh = 0;
    count = 0;
    since = chip.now();
    raise(0);
  }

  /** Counts up to now, before something about the clocks changes. */
  void holdTime() {
    count = countAt(chip.now());
    since = chip.now();
  }

  /** Goes on counting, by the clocks as they are now. */
  void resumeTime() {
    Ratio perCycle = Ratio.ZERO;
    if (watchdog.cycles() > 0) {
      perCycle =
          chip.clocks().reference().over(chip.clocks().system().times(watchdog.cycles())).reduced();
    }
    // As a fraction of whole numbers: clocks are some MHz by small whole divisors.
    long scale = denominator(perCycle);
    ticks = perCycle.times(scale).floor();
    perCycles = scale;
    for (int i = 0; i < ALARMS; i++) {
      if ((armed >>> i & 1) != 0) {
        schedule(i);
      }
    }
  }

  private static long denominator(Ratio value) {
    for (long by = 1; by < 1 << 20; by++) {
      Ratio scaled = value.times(by);
      if (Ratio.of(scaled.floor()).equals(scaled)) {
        return by;
      }
    }
    throw new IllegalStateException("clocks without a common measure: " + value);
  }

  private long countAt(long cycle) {
    return count + Math.multiplyExact(cycle - since, ticks) / perCycles;
  }

  private long time() {
    if (ticks == 0) {
      throw chip.fault(base(), "the timer is asked, but the watchdog's tick was never started");
    }
    return countAt(chip.now());
  }

  private int latch() {
    long time = time();
    latchedHigh = (int) (time >>> 32);
    return (int) time;
  }

  private void arm(int number, int value) {
    time();
    alarm[number] = value;
    armed |= 1 << number;
    schedule(number);
  }

  private void schedule(int number) {
    if (ticks == 0) {
      dueAt[number] = NEVER;
      return;
    }
    long wait = alarm[number] - (int) countAt(chip.now()) & 0xFFFFFFFFL;
    long whole = countAt(chip.now()) + wait - count;
    long cycles = (Math.multiplyExact(whole, perCycles) + ticks - 1) / ticks;
    dueAt[number] = Math.max(since + cycles, chip.now());
  }

  @Override
  public long due() {
    if (armed == 0) {
      return NEVER;
    }
    long due = NEVER;
    for (int i = 0; i < ALARMS; i++) {
      if ((armed >>> i & 1) != 0) {
        due = Math.min(due, dueAt[i]);
      }
    }
    return due;
  }

  @Override
  public void run(long cycle) {
    for (int i = 0; i < ALARMS; i++) {
      if ((armed >>> i & 1) != 0 && dueAt[i] <= cycle) {
        armed &= ~(1 << i);
        raise(raised | 1 << i);
      }
    }
  }

  private int status() {
    return (raised & enabled) | forced;
  }

  private void raise(int value) {
    raised = value;
    lines();
  }

  private void enable(int value) {
    enabled = value;
    lines();
  }

  private void force(int value) {
    forced = value;
    lines();
  }

  private void lines() {
    for (int i = 0; i < ALARMS; i++) {
      chip.nvic().line(Nvic.TIMER_0 + i, (status() >>> i & 1) != 0);
    }
  }
}
