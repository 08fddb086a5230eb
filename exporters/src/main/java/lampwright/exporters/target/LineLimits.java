package lampwright.exporters.target;

import lampwright.engine.check.Checks;
import lampwright.engine.rig.LineTime;
import lampwright.engine.rig.LineTiming;

/**
 * What a pixel's data line asks for.
 *
 * @param t0h high time of a 0 bit
 * @param t0l low time of a 0 bit
 * @param t1h high time of a 1 bit
 * @param t1l low time of a 1 bit
 * @param bit length of a bit
 */
public record LineLimits(Range t0h, Range t0l, Range t1h, Range t1l, Range bit) {
  /**
   * A span of time, both ends included.
   *
   * @param leastNs ns
   * @param greatestNs ns
   */
  public record Range(double leastNs, double greatestNs) {
    static Range of(LineTime time) {
      return new Range(time.leastNs(), time.greatestNs());
    }

    double middleNs() {
      return (leastNs + greatestNs) / 2;
    }

    /** By what share a clock may be off until this time leaves the range; negative if outside. */
    double room(double ns) {
      return Math.min(ns / leastNs, greatestNs / ns) - 1;
    }

    /** {@code 250 to 550 ns}. */
    String words() {
      return Checks.plain(leastNs) + " to " + Checks.plain(greatestNs) + " ns";
    }
  }

  /** How far a clock may be off before a bit leaves its limits, where there is a choice. */
  private static final double WANTED_ROOM = 0.05;

  /** A long T1H is aimed at no further above its least: it only costs time. */
  private static final double LONG_HIGH = 1.4;

  /** TH + TL of the WS2812B datasheet, 1.25 us +- 0.6, where a type states none. */
  private static final Range USUAL_BIT = new Range(650, 1850);

  /** The limits of a line. */
  public static LineLimits of(LineTiming line) {
    return new LineLimits(
        Range.of(line.t0h()),
        Range.of(line.t0l()),
        Range.of(line.t1h()),
        Range.of(line.t1l()),
        line.bit().map(Range::of).orElse(USUAL_BIT));
  }

  /** By what share the clock may be off until one of these times leaves its range. */
  double room(SentTimes sent) {
    double high = Math.min(t0h.room(sent.t0hNs()), t1h.room(sent.t1hNs()));
    double low = Math.min(t0l.room(sent.t0lNs()), t1l.room(sent.t1lNs()));
    double bits = Math.min(bit.room(sent.bitNs()), bit.room(sent.shorterBitNs()));
    return Math.min(Math.min(high, low), bits);
  }

  /** Whether a bit of these times is nearer to a limit than one should be. */
  boolean tight(SentTimes sent) {
    return room(sent) < WANTED_ROOM;
  }

  /** How far the high times, which tell a 0 from a 1, are from those aimed at, ns. */
  double highTimesOffNs(SentTimes sent) {
    double high1 = Math.min(t1h.middleNs(), LONG_HIGH * t1h.leastNs());
    return Math.abs(sent.t0hNs() - t0h.middleNs()) + Math.abs(sent.t1hNs() - high1);
  }

  /** The ranges in words. */
  String words() {
    return "T0H "
        + t0h.words()
        + ", T0L "
        + t0l.words()
        + ", T1H "
        + t1h.words()
        + ", T1L "
        + t1l.words();
  }
}
