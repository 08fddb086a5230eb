package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import lampwright.engine.light.Colour;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import org.junit.jupiter.api.Test;

/**
 * Y is luminous intensity: of the WS2812B's emitters 405, 690 and 190 mcd for red, green and blue
 * (the middles of its data sheet's ranges), of a plain LED 50 mcd per mA (common practice).
 */
class LampLightTest {
  private final List<DriverOutput> outputs =
      List.of(
          new DriverOutput("white", new Colour.Srgb(255, 255, 255), 20, 1, 3),
          new DriverOutput("string", new Colour.Srgb(0, 0, 0), 10, 3, 2));

  /** In the order green, red, blue: 2 pixels, then the outputs. */
  private final Map<String, List<LampLight>> lights =
      LampLight.ofLamps(
          new FrameLayout(
              Rig.of(
                  List.of(new Chain("c", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 2)),
                  outputs,
                  List.of(
                      Lamp.ofPixels("pixels", new PixelRun("c", 0, 2)),
                      Lamp.ofOutput("white", "white"),
                      Lamp.ofOutput("string", "string")))));

  private LampLight light(String lamp, int pixel) {
    return lights.get(lamp).get(pixel);
  }

  @Test
  void pixelsHaveTheLightOfTheirEmitters() {
    assertThat(lights.get("pixels")).hasSize(2);
    assertThat(light("pixels", 0).columns()).containsExactly(0, 1, 2);
    assertThat(light("pixels", 1).columns()).containsExactly(3, 4, 5);
    double[] xyz = light("pixels", 1).columnsXyz();
    assertThat(new double[] {xyz[1], xyz[4], xyz[7]})
        .containsExactly(new double[] {690, 405, 190}, within(1e-9));
    // X of red by its chromaticity, 0.6963 / 0.3036 of Y.
    assertThat(xyz[3]).isCloseTo(405 * 0.6963 / 0.3036, within(1e-9));
    double[] all = light("pixels", 1).fullXyz();
    assertThat(all[1]).isCloseTo(690 + 405 + 190, within(1e-9));
    assertThat(all[0]).isCloseTo(xyz[0] + xyz[3] + xyz[6], within(1e-9));
    assertThat(all[2]).isCloseTo(xyz[2] + xyz[5] + xyz[8], within(1e-9));
  }

  /** 20 mA and one LED, 10 mA and three of them; black is taken for white, D65. */
  @Test
  void outputsHaveTheLightOfTheirLeds() {
    assertThat(light("white", 0).columnsXyz()[1]).isCloseTo(50 * 20, within(1e-9));
    double[] string = light("string", 0).columnsXyz();
    assertThat(string[1]).isCloseTo(50 * 10 * 3, within(1e-9));
    assertThat(string[0] / string[1]).isCloseTo(0.3127 / 0.3290, within(2e-4));
  }

  @Test
  void lightGoesWithTheDuty() {
    byte[] frame = {0, 0, 0, 51, 0, (byte) 255, 0, 102};
    double[] xyz = {0, 1, 2, 3};
    light("pixels", 1).add(frame, xyz, 1);
    assertThat(xyz[0]).isZero();
    assertThat(xyz[2]).isCloseTo(2 + 690 / 5.0 + 190, within(1e-9));
    assertThat(light("pixels", 1).mostDuty(frame)).isEqualTo(255);
    assertThat(light("string", 0).mostDuty(frame)).isEqualTo(102);
    assertThat(light("pixels", 0).mostDuty(frame)).isZero();
    byte[] other = frame.clone();
    other[5] = 1;
    assertThat(light("pixels", 1).differs(frame, other)).isTrue();
    assertThat(light("pixels", 0).differs(frame, other)).isFalse();
    assertThat(light("string", 0).differs(frame, other)).isFalse();
  }
}
