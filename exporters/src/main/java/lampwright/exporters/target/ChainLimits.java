package lampwright.exporters.target;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Optional;
import lampwright.engine.rig.Chain;

/** The limits of a chain's bits, for a driver of the builder's own. */
public final class ChainLimits {
  private final LineLimits limits;

  private ChainLimits(LineLimits limits) {
    this.limits = limits;
  }

  /** Those of the chain's pixels. */
  public static ChainLimits of(Chain chain) {
    return new ChainLimits(LineLimits.of(chain.type().line()));
  }

  /** In steps of 62.5 ns, as for an AVR. */
  private static final int PIN_HERTZ = 16_000_000;

  /** Whole nanoseconds inside the limits, by name: {@code T0H_MIN_NS} and so on. */
  public ImmutableMap<String, Long> times() {
    ImmutableMap.Builder<String, Long> times = ImmutableMap.builder();
    put(times, "T0H", limits.t0h());
    put(times, "T0L", limits.t0l());
    put(times, "T1H", limits.t1h());
    put(times, "T1L", limits.t1l());
    return times.buildOrThrow();
  }

  private static void put(
      ImmutableMap.Builder<String, Long> times, String name, LineLimits.Range range) {
    times.put(name + "_MIN_NS", (long) Math.ceil(range.leastNs()));
    times.put(name + "_MAX_NS", (long) Math.floor(range.greatestNs()));
  }

  /**
   * Times for a pin that is set by counting cycles, both kinds of bit of one length; none if none
   * stays within.
   */
  public Optional<SentTimes> pinTimes() {
    return AvrWaves.find(limits, PIN_HERTZ).map(wave -> wave.at(PIN_HERTZ));
  }

  /**
   * How an SPI sends them; none if none can.
   *
   * @param hertz the clocks that it can have; none if that is not known
   */
  public Optional<SpiBits> spiBits(List<Integer> hertz) {
    return SpiBits.of(limits, hertz);
  }
}
