package lampwright.exporters.target;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Bits of a pixel as bytes on the data line of an SPI, one byte a bit, most significant bit first.
 * Each byte ends low, so that a gap between bytes makes no line high.
 *
 * @param hertz clock of the SPI
 * @param zero the byte that sends a 0
 * @param one the byte that sends a 1
 */
public record SpiBits(int hertz, int zero, int one) {
  private static final int BITS = 8;

  /** Clocks to try: bits of 1.25 us first, then longer and shorter ones. */
  private static final int[] HERTZ = {6_400_000, 6_000_000, 5_600_000, 5_000_000, 8_000_000};

  /** Enough room, as a share of the clock, for an SPI that can't have just this clock: ours. */
  private static final double ENOUGH_ROOM = 0.1;

  private record Choice(SpiBits bits, double room) {}

  /** The bytes for a pixel's limits; none if none stays within. */
  static Optional<SpiBits> of(LineLimits limits) {
    return IntStream.of(HERTZ)
        .boxed()
        .flatMap(hertz -> choices(hertz, limits))
        .filter(choice -> choice.room >= 0)
        .max(Comparator.comparingDouble(choice -> Math.min(ENOUGH_ROOM, choice.room)))
        .map(Choice::bits);
  }

  private static Stream<Choice> choices(int hertz, LineLimits limits) {
    return IntStream.range(2, BITS)
        .boxed()
        .flatMap(
            one ->
                IntStream.range(1, one)
                    .mapToObj(
                        zero ->
                            new Choice(
                                new SpiBits(hertz, high(zero), high(one)),
                                limits.room(times(hertz, zero, one)))));
  }

  private static SentTimes times(int hertz, int zero, int one) {
    double ns = 1e9 / hertz;
    return new SentTimes(zero * ns, (BITS - zero) * ns, one * ns, (BITS - one) * ns);
  }

  private static int high(int bits) {
    return 0xFF << (BITS - bits) & 0xFF;
  }
}
