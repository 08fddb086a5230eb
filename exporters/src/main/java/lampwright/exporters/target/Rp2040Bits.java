package lampwright.exporters.target;

import com.google.common.collect.Ordering;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The bits that a state machine of the RP2040 sends to a chain, in steps of its divided clock.
 * Every bit is high for {@code high} steps and low for {@code low} at its end; between them the
 * line is high for {@code high1} steps more in a 1, low for {@code low0} steps more in a 0. Each is
 * one instruction with its delay, so 1 to {@value #MOST_STEPS}.
 */
public record Rp2040Bits(int high, int high1, int low0, int low) {
  /** The delay of an instruction beside one side-set pin has 4 bits (RP2040 datasheet, 3.4.1). */
  static final int MOST_STEPS = 16;

  /** The bit length of the datasheets. */
  private static final double WANTED_BIT_NS = 1250;

  /** The same as times. */
  SentTimes at(double stepNs) {
    return new SentTimes(
        high * stepNs, (low0 + low) * stepNs, (high + high1) * stepNs, low * stepNs);
  }

  /**
   * The best bits for these limits: 5 % away from every limit where that can be; a 1 high for
   * longer than low, by which instruments tell the bits apart; high times in the middle of their
   * ranges.
   *
   * @param stepNs length of a step, ns
   * @return none if no bit of whole steps stays within the limits
   */
  static Optional<Rp2040Bits> find(LineLimits limits, double stepNs) {
    // High times outside their limits are left out first: few of 65,536 bits are left to look at.
    Ordering<Comparable<?>> least = Ordering.natural();
    return steps()
        .filter(high -> limits.t0h().room(high * stepNs) >= 0)
        .flatMap(
            high ->
                steps()
                    .filter(high1 -> limits.t1h().room((high + high1) * stepNs) >= 0)
                    .flatMap(high1 -> lows(limits, stepNs, high, high1)))
        .min(
            Ordering.compound(
                List.of(
                    least.onResultOf(bits -> limits.tight(bits.at(stepNs))),
                    least.onResultOf(bits -> bits.high + bits.high1 <= bits.low),
                    least.onResultOf(bits -> limits.highTimesOffNs(bits.at(stepNs))),
                    least.onResultOf(bits -> Math.abs(bits.at(stepNs).bitNs() - WANTED_BIT_NS)),
                    least.onResultOf(bits -> -limits.room(bits.at(stepNs))))));
  }

  private static Stream<Rp2040Bits> lows(LineLimits limits, double stepNs, int high, int high1) {
    return steps()
        .flatMap(low0 -> steps().map(low -> new Rp2040Bits(high, high1, low0, low)))
        .filter(bits -> limits.room(bits.at(stepNs)) >= 0);
  }

  private static Stream<Integer> steps() {
    return IntStream.rangeClosed(1, MOST_STEPS).boxed();
  }
}
