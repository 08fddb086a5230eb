package lampwright.exporters.proof;

import lampwright.engine.time.Ratio;

/** When frames begin, and whether they come at the rate that they should. */
final class FrameClock {
  /** Single frames may come a tick of the firmware's clock late, but the rate must be right. */
  private static final double RATE_SLACK_NS = 1e6;

  private final Ratio periodCycles;
  private final double nsPerCycle;
  private boolean opened;
  private boolean clocked;
  private long start;
  private long first;
  private long last;
  private long periods;
  private long least;
  private long most;

  FrameClock(Ratio periodCycles, double nsPerCycle) {
    this.periodCycles = periodCycles;
    this.nsPerCycle = nsPerCycle;
  }

  /** Whether a frame has begun. */
  boolean opened() {
    return opened;
  }

  /** When the n-th frame should begin, by when the first one did. */
  long nominal(long frame) {
    return start + periodCycles.times(frame).floor();
  }

  long periodCycles() {
    return periodCycles.floor();
  }

  /** Sets when the first frame began. */
  void open(long cycle) {
    opened = true;
    start = cycle;
  }

  /**
   * A frame begins. The first is left out of the periods: it comes when the scene is opened, the
   * others when the clock ticks.
   */
  void frame(long cycle) {
    if (!opened) {
      open(cycle);
      return;
    }
    if (!clocked) {
      clocked = true;
      first = cycle;
    } else {
      long period = cycle - last;
      least = periods == 0 ? period : Math.min(least, period);
      most = Math.max(most, period);
      periods++;
    }
    last = cycle;
  }

  double meanCycles() {
    return periods == 0 ? 0 : (double) (last - first) / periods;
  }

  void judge(Faults faults) {
    double drift = (meanCycles() - periodCycles.doubleValue()) * periods;
    if (periods > 0 && Math.abs(drift) * nsPerCycle > RATE_SLACK_NS) {
      faults.add(
          "the frames come every %.2f us, expected %.2f",
          meanCycles() * nsPerCycle / 1000, periodCycles.doubleValue() * nsPerCycle / 1000);
    }
  }

  void report(Figures figures) {
    figures.put("/framePeriod/averageUs", meanCycles() * nsPerCycle / 1000);
    figures.put("/framePeriod/minUs", least * nsPerCycle / 1000);
    figures.put("/framePeriod/maxUs", most * nsPerCycle / 1000);
    figures.put("/framePeriod/expectedUs", periodCycles.doubleValue() * nsPerCycle / 1000);
  }
}
