package lampwright.exporters.target;

import com.google.common.collect.ComparisonChain;
import java.util.Optional;

/** Finds the bits that an AVR can send within a pixel's limits. */
final class AvrWaves {
  /**
   * The bit length aimed at, a little over the usual 1.25 us: it leaves room for interrupts between
   * the bits.
   */
  private static final double WANTED_BIT_NS = 1300;

  /** More cycles than any bit needs at the clocks that an AVR can have. */
  private static final int MOST_CYCLES = 64;

  private final LineLimits limits;
  private final int hertz;

  private AvrWaves(LineLimits limits, int hertz) {
    this.limits = limits;
    this.hertz = hertz;
  }

  /**
   * The best bits for these limits: high times, which tell a 0 from a 1, in the middle of their
   * ranges; 5 % away from every limit where that can be; a 1 high for longer than low, by which
   * instruments tell the bits apart.
   *
   * @param hertz the controller's clock
   * @return none if no bit of whole cycles stays within the limits
   */
  static Optional<AvrWave> find(LineLimits limits, int hertz) {
    AvrWaves waves = new AvrWaves(limits, hertz);
    Optional<AvrWave> flipping = waves.best(AvrWave.Way.FLIPS_PIN);
    if (flipping.isPresent() && !limits.tight(waves.times(flipping.get()))) {
      return flipping;
    }
    return waves.best(AvrWave.Way.WRITES_PORT).or(() -> flipping);
  }

  private Optional<AvrWave> best(AvrWave.Way way) {
    Optional<AvrWave> best = Optional.empty();
    for (int t0h = 1; t0h <= most(limits.t0h()); t0h++) {
      for (int t1h = t0h + 1; t1h <= most(limits.t1h()); t1h++) {
        for (int t1l = 1; t1l <= most(limits.t1l()); t1l++) {
          AvrWave wave = new AvrWave(way, t0h, t1h, t1l);
          // Whether a routine fits is asked last: it takes longest.
          if (limits.room(times(wave)) >= 0
              && (best.isEmpty() || better(wave, best.get()))
              && AvrRoutine.fits(wave)) {
            best = Optional.of(wave);
          }
        }
      }
    }
    return best;
  }

  private boolean better(AvrWave one, AvrWave other) {
    return ComparisonChain.start()
            .compareFalseFirst(limits.tight(times(one)), limits.tight(times(other)))
            .compareFalseFirst(one.t1h() <= one.t1l(), other.t1h() <= other.t1l())
            .compare(limits.highTimesOffNs(times(one)), limits.highTimesOffNs(times(other)))
            .compare(bitTimeOff(one), bitTimeOff(other))
            .result()
        < 0;
  }

  private int most(LineLimits.Range range) {
    return (int) Math.min(MOST_CYCLES, range.greatestNs() * hertz / 1e9);
  }

  private double bitTimeOff(AvrWave wave) {
    return Math.abs(times(wave).bitNs() - WANTED_BIT_NS);
  }

  private SentTimes times(AvrWave wave) {
    return wave.at(hertz);
  }
}
