package lampwright.exporters.live;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import org.junit.jupiter.api.Test;

/**
 * Numbers by Python, which has a CRC of the same polynomial that goes through the bits the other
 * way: {@code binascii.crc_hqx} of the layout's bytes, bits reversed, from 0xFFFF, its bits
 * reversed.
 */
class LiveLayoutTest {
  /** CRC-16/MCRF4XX, check value (RevEng's catalogue, from memory). */
  @Test
  void crcOfTheCataloguesTextIsItsCheckValue() {
    byte[] text = "0123456789".getBytes(US_ASCII);
    assertThat(Crc16.of(text, 1, 10)).isEqualTo(0x6F91);
    assertThat(Crc16.of(text, 4, 4)).isEqualTo(0xFFFF);
    assertThatThrownBy(() -> Crc16.of(text, 1, 11)).isInstanceOf(IndexOutOfBoundsException.class);
  }

  private static Chain chain(String id, String type, int pixels, String order) {
    PixelType found = BuiltInPixelTypes.find(type).orElseThrow();
    return new Chain(
        id, found, pixels, EmitterOrder.parse(order).orElseThrow(), OptionalDouble.empty());
  }

  private static Rig rig(int outputs, Chain... chains) {
    return Rig.of(
        List.of(chains),
        Stream.iterate(0, i -> i + 1).limit(outputs).map(i -> DriverOutput.of("o" + i)).toList(),
        List.of());
  }

  @Test
  void layoutIsNumberedByChainsPixelsOrdersAndOutputs() {
    assertThat(LiveLayout.of(rig(0, chain("a", "ws2812b", 16, "GRB")))).isEqualTo(0x34AE);
    assertThat(
            LiveLayout.of(
                rig(2, chain("b", "sk6812-rgbw", 4, "GRBW"), chain("c", "ws2812b", 4, "GRB"))))
        .isEqualTo(0x6442);
    assertThat(LiveLayout.of(rig(3))).isEqualTo(0xC223);
    assertThat(
            LiveLayout.of(
                rig(0, chain("b", "ws2812b", 400, "RGB"), chain("c", "sk6812-rgbw", 1, "WRGB"))))
        .isEqualTo(0x98B6);
  }
}
