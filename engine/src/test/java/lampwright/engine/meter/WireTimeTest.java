package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import org.junit.jupiter.api.Test;

class WireTimeTest {
  private static WireTime of(String type, int pixels) {
    return WireTime.of(new Chain("c", BuiltInPixelTypes.find(type).orElseThrow(), pixels));
  }

  /** WS2812B datasheet: at 30 frames/s a chain of 1,024 pixels is served. */
  @Test
  void datasheetChainOf1024PixelsFits30FramesASecond() {
    WireTime time = of("ws2812b", 1024);
    assertThat(time.pixelUs()).isCloseTo(24 * 1.25, within(1e-9));
    assertThat(time.pixels() * time.pixelUs()).isCloseTo(30_720, within(1e-6));
    assertThat(time.share(30)).isLessThan(1);
    assertThat(time.longestChain(30)).isBetween(1024, 1111);
    assertThat(time.highestFramesPerSecond()).isBetween(30.0, 33.0);
  }

  /** 32 bits of 1.2 us: 38.4 us a pixel (SK6812 RGBW datasheet, from memory). */
  @Test
  void rgbwPixelTakes32Bits() {
    assertThat(of("sk6812-rgbw", 1).pixelUs()).isCloseTo(38.4, within(1e-9));
    assertThat(of("sk6812-rgbw", 1).frameUs()).isCloseTo(118.4, within(1e-9));
  }

  @Test
  void longestChainJustFits() {
    WireTime time = of("sk6812-rgbw", 1);
    int most = time.longestChain(50);
    assertThat(of("sk6812-rgbw", most).share(50)).isLessThanOrEqualTo(1);
    assertThat(of("sk6812-rgbw", most + 1).share(50)).isGreaterThan(1);
  }

  @Test
  void noChainFitsAFrameShorterThanTheReset() {
    assertThat(new WireTime("c", 1, 30, 300).longestChain(5000)).isZero();
  }

  @Test
  void resetsOfChainsInTurnOverlap() {
    WireTime longReset = new WireTime("a", 10, 30, 300);
    WireTime shortReset = new WireTime("b", 100, 30, 50);
    // 300 us of bits, then 3,000 us of the other's: the first reset is long over.
    assertThat(WireTime.inTurnUs(List.of(longReset, shortReset))).isEqualTo(3350);
    assertThat(WireTime.inTurnUs(List.of(shortReset, longReset))).isEqualTo(3600);
    assertThat(WireTime.inTurnUs(List.of())).isZero();
  }
}
