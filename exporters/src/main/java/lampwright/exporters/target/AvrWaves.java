package lampwright.exporters.target;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Finds the bits that an AVR can send within a pixel's limits. */
final class AvrWaves {
  /** How far a clock may be off before a bit leaves its limits, where there is a choice. */
  private static final double WANTED_ROOM = 0.05;

  /**
   * The bit length aimed at, a little over the usual 1.25 us: it leaves room for interrupts between
   * the bits.
   */
  private static final double WANTED_BIT_NS = 1300;

  /** A long T1H is aimed at no further above its least: it only costs time. */
  private static final double LONG_HIGH = 1.4;

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
    if (flipping.isPresent() && waves.room(flipping.get()) >= WANTED_ROOM) {
      return flipping;
    }
    return waves.best(AvrWave.Way.WRITES_PORT).or(() -> flipping);
  }

  private Optional<AvrWave> best(AvrWave.Way way) {
    return candidates(way)
        .filter(wave -> room(wave) >= 0 && AvrRoutine.fits(wave))
        .min(
            Comparator.comparing((AvrWave wave) -> room(wave) < WANTED_ROOM)
                .thenComparing(wave -> wave.t1h() <= wave.t1l())
                .thenComparingDouble(this::highTimesOff)
                .thenComparingDouble(wave -> Math.abs(times(wave).bitNs() - WANTED_BIT_NS)));
  }

  private Stream<AvrWave> candidates(AvrWave.Way way) {
    return upTo(limits.t0h())
        .boxed()
        .flatMap(
            t0h ->
                upTo(limits.t1h())
                    .filter(t1h -> t1h > t0h)
                    .boxed()
                    .flatMap(
                        t1h ->
                            upTo(limits.t1l()).mapToObj(t1l -> new AvrWave(way, t0h, t1h, t1l))));
  }

  private IntStream upTo(LineLimits.Range range) {
    int most = (int) Math.min(MOST_CYCLES, range.greatestNs() * hertz / 1e9);
    return IntStream.rangeClosed(1, most);
  }

  private double highTimesOff(AvrWave wave) {
    SentTimes sent = times(wave);
    double t1h = Math.min(limits.t1h().middleNs(), LONG_HIGH * limits.t1h().leastNs());
    return Math.abs(sent.t0hNs() - limits.t0h().middleNs()) + Math.abs(sent.t1hNs() - t1h);
  }

  private double room(AvrWave wave) {
    return limits.room(times(wave));
  }

  private SentTimes times(AvrWave wave) {
    return wave.at(hertz);
  }
}
