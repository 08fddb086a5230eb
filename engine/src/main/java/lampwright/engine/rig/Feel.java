package lampwright.engine.rig;

import lampwright.engine.check.Checks;

/**
 * The warm-up of a lamp that stands for a filament.
 *
 * @param riseMs time to 90 % when it comes on, 0 (at once) to 60,000 ms
 * @param fallMs time to 10 % when it goes off, 0 (at once) to 60,000 ms
 */
public record Feel(double riseMs, double fallMs) {
  /** At once. */
  public static final double DEFAULT_RISE_MS = 0;

  /** At once. */
  public static final double DEFAULT_FALL_MS = 0;

  public Feel {
    Checks.of("feel").range("riseMs", riseMs, 0, 60_000).range("fallMs", fallMs, 0, 60_000).done();
  }
}
