package lampwright.exporters.target;

import com.google.common.collect.Ordering;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Bits of a pixel as 4 or 8 bits each on the data line of an SPI, most significant bit first. Each
 * ends low, so that a gap between bytes makes no line high.
 *
 * @param hertz clock of the SPI
 * @param bits of the SPI for a bit of a pixel, 4 or 8
 * @param zero what sends a 0
 * @param one what sends a 1
 */
public record SpiBits(int hertz, int bits, int zero, int one) {
  private static final int BYTE = 8;

  /** With 4 bits a frame takes half the memory. Bits of 1.25 us. */
  private static final int SHORT = 4;

  private static final int SHORT_HERTZ = 3_200_000;

  /** Clocks to try with 8 bits: bits of 1.25 us first, then longer and shorter ones. */
  private static final List<Integer> HERTZ =
      List.of(6_400_000, 6_000_000, 5_600_000, 5_000_000, 8_000_000);

  /** Enough room, as a share of the clock, for an SPI that can't have just this clock: ours. */
  private static final double ENOUGH_ROOM = 0.1;

  private record Choice(SpiBits bits, double room) {}

  /**
   * The bits for a pixel's limits; none if none stays within.
   *
   * @param clocks that the SPI can have, Hz, the best first; none if that is not known
   */
  static Optional<SpiBits> of(LineLimits limits, List<Integer> clocks) {
    List<Integer> few = clocks.isEmpty() ? List.of(SHORT_HERTZ) : clocks;
    List<Integer> many = clocks.isEmpty() ? HERTZ : clocks;
    return best(of(few, SHORT, limits).filter(choice -> choice.room >= ENOUGH_ROOM))
        .or(() -> best(of(many, BYTE, limits).filter(choice -> choice.room >= 0)));
  }

  private static Stream<Choice> of(List<Integer> clocks, int bits, LineLimits limits) {
    return clocks.stream().flatMap(hertz -> choices(hertz, bits, limits));
  }

  private static Optional<SpiBits> best(Stream<Choice> choices) {
    return choices
        .max(Ordering.natural().onResultOf(choice -> Math.min(ENOUGH_ROOM, choice.room)))
        .map(Choice::bits);
  }

  private static Stream<Choice> choices(int hertz, int bits, LineLimits limits) {
    return IntStream.range(2, bits)
        .boxed()
        .flatMap(
            one ->
                IntStream.range(1, one)
                    .mapToObj(
                        zero ->
                            new Choice(
                                new SpiBits(hertz, bits, high(bits, zero), high(bits, one)),
                                limits.room(times(hertz, bits, zero, one)))));
  }

  private static SentTimes times(int hertz, int bits, int zero, int one) {
    double ns = 1e9 / hertz;
    return new SentTimes(zero * ns, (bits - zero) * ns, one * ns, (bits - one) * ns);
  }

  private static int high(int bits, int count) {
    int all = (1 << bits) - 1;
    return all << (bits - count) & all;
  }
}
