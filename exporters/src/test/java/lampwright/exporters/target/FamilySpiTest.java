package lampwright.exporters.target;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.PixelType;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the SPI example asks of the boards of a family, at the clock that their SPI then has: every
 * built-in pixel type gets its bits within its limits, or the example says that no such SPI can.
 */
class FamilySpiTest {
  /**
   * A board's SPI: a clock divided by whole numbers or by powers of two; from memory, the makers'
   * reference manuals.
   *
   * @param hertz of the clock that is divided
   */
  private record Spi(String board, double hertz, boolean powersOfTwo) {
    /** The next clock not above what is asked for, as the cores choose it. */
    double below(int asked) {
      int divider = powersOfTwo ? 2 : 1;
      while (hertz / divider > asked + 0.5 * asked / hertz) {
        divider = powersOfTwo ? divider * 2 : divider + 1;
      }
      return hertz / divider;
    }
  }

  static Stream<Arguments> boards() {
    return Stream.of(
            Arguments.of("esp32", new Spi("all", 80e6, false)),
            Arguments.of("stm32", new Spi("48 MHz", 48e6, true)),
            Arguments.of("stm32", new Spi("96 MHz", 96e6, true)),
            Arguments.of("stm32", new Spi("100 MHz", 100e6, true)),
            Arguments.of("samd21", new Spi("SAMD21", 24e6, false)))
        .flatMap(
            board ->
                BuiltInPixelTypes.all().stream()
                    .map(type -> Arguments.of(board.get()[0], board.get()[1], type.id())));
  }

  @ParameterizedTest(name = "{0} {1} {2}")
  @MethodSource("boards")
  void everyBitIsWithinTheLimits(String family, Spi board, String id) {
    PixelType type = BuiltInPixelTypes.find(id).orElseThrow();
    List<Integer> clocks = Target.of(Controller.find(family).orElseThrow()).spiHertz();
    assertThat(clocks).isNotEmpty();
    Optional<SpiBits> found = ChainLimits.of(new Chain("c", type, 1)).spiBits(clocks);
    assertThat(found).as("bits for " + id).isPresent();
    SpiBits bits = found.get();
    double ns = 1e9 / board.below(bits.hertz());
    PixelLimits limits = PixelLimits.of(type);
    for (boolean one : new boolean[] {false, true}) {
      int high = Integer.bitCount(one ? bits.one() : bits.zero());
      double highNs = high * ns;
      double lowNs = (bits.bits() - high) * ns;
      assertThat(highNs).isBetween(limits.leastHigh(one) - 0.1, limits.greatestHigh(one) + 0.1);
      assertThat(lowNs).isBetween(limits.leastLow(one) - 0.1, limits.greatestLow(one) + 0.1);
      assertThat(highNs + lowNs).isBetween(limits.leastBit() - 0.1, limits.greatestBit() + 0.1);
    }
  }
}
