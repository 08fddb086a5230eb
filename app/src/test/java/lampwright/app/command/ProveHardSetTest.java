package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Projects made to be hard, proved as a builder proves theirs: firmware as it is exported, two
 * loops and the seam. For an AVR it is compiled by avr-gcc and runs on libsimavr; for an RP2040 the
 * UF2 file runs on the model that comes with the program.
 */
class ProveHardSetTest {
  private static final String AVR = "atmega328p";
  private static final String RP2040 = "rp2040";
  private static final String RGB =
      """
      {"id": "rgb", "pixelType": "ws2812b", "pixels": %d}""";
  private static final String RGBW =
      """
      {"id": "rgbw", "pixelType": "sk6812-rgbw", "pixels": %d}""";
  private static final String CHASE =
      """
      {"kind": "chase", "colour": "#FFA000", "stepMs": 40, "tail": 2}""";
  private static final String FLICKER =
      """
      {"kind": "flicker", "colour": "#FF8020", "seed": 7, "depth": 0.9, "rateHz": 25}""";

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {AVR, RP2040})
  void onePixelIsProved(String controller) throws IOException {
    assertProved(
        rig(controller, RGB.formatted(1), "", lamp("a", "rgb", 1)),
        scene(300, 50, "off", track("a", 300, CHASE)),
        15,
        24);
  }

  @ParameterizedTest
  @ValueSource(strings = {AVR, RP2040})
  void chainOf256PixelsIsProved(String controller) throws IOException {
    assertProved(
        rig(controller, RGB.formatted(256), "", lamp("a", "rgb", 256)),
        scene(400, 25, "off", track("a", 400, CHASE)),
        10,
        256 * 24);
  }

  @ParameterizedTest
  @ValueSource(strings = {AVR, RP2040})
  void rgbAndRgbwChainsTogetherAreProved(String controller) throws IOException {
    String chains = RGB.formatted(7) + ", " + RGBW.formatted(5);
    assertProved(
        rig(controller, chains, "", lamp("a", "rgb", 7) + ", " + lamp("b", "rgbw", 5)),
        scene(400, 50, "off", track("a", 400, CHASE), track("b", 400, FLICKER)),
        20,
        7 * 24 + 5 * 32);
  }

  @ParameterizedTest
  @ValueSource(strings = {AVR, RP2040})
  void outputsAloneAreProved(String controller) throws IOException {
    String lamps =
        """
        {"id": "a", "output": "o"}, {"id": "b", "output": "p"}""";
    String fade =
        """
        {"kind": "fade"}""";
    assertProved(
        rig(controller, "", "{\"id\": \"o\"}, {\"id\": \"p\"}", lamps),
        scene(500, 50, "off", track("a", 500, fade), track("b", 500, FLICKER)),
        25,
        0);
  }

  @ParameterizedTest
  @ValueSource(strings = {AVR, RP2040})
  void sceneOfOneFrameIsProved(String controller) throws IOException {
    String steady =
        """
        {"kind": "steady", "colour": "#204060"}""";
    assertProved(
        rig(controller, RGBW.formatted(4), "", lamp("a", "rgbw", 4)),
        scene(20, 50, "off", track("a", 20, steady)),
        1,
        4 * 32);
  }

  /** 620 ms hold neither whole turns of 280 ms nor whole flashes of 170 ms: the seam is a jump. */
  @ParameterizedTest
  @ValueSource(strings = {AVR, RP2040})
  void lengthThatIsNoMultipleOfThePeriodsIsProvedOverTheSeam(String controller) throws IOException {
    String beacon =
        """
        {"kind": "chase", "colour": "#FFA000", "stepMs": 70, "tail": 1}""";
    String flash =
        """
        {"kind": "flash", "colour": "#0028FF", "onMs": 60, "offMs": 110}""";
    assertProved(
        rig(controller, RGB.formatted(8), "", lamp("a", "rgb", 4) + ", " + lamp("b", "rgb", 4, 4)),
        scene(620, 50, "off", track("a", 620, beacon), track("b", 620, flash)),
        31,
        8 * 24);
  }

  @ParameterizedTest
  @ValueSource(strings = {AVR, RP2040})
  void ditheredNoiseIsProved(String controller) throws IOException {
    assertProved(
        rig(controller, RGB.formatted(12), "", lamp("a", "rgb", 12)),
        scene(1000, 60, "temporal", track("a", 1000, FLICKER)),
        60,
        12 * 24);
  }

  /** Asserts that two loops came out as in the table and every bit was inside its limits. */
  private void assertProved(String rig, String scene, int frames, int bitsPerFrame)
      throws IOException {
    if (rig.contains(AVR)) {
      OutsideTools.onThisMachine().findSimulator();
    }
    String project =
        """
        {"lampwright": 1, "rig": %s, "scenes": [%s]}""";
    Path file = folder.resolve("hard.lampwright.json");
    Run run = Run.of("prove", Files.writeString(file, project.formatted(rig, scene)));
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    String row = run.out().lines().filter(line -> line.startsWith("s ")).findFirst().orElseThrow();
    List<String> cells = Arrays.asList(row.split(" +", -1));
    int compared = Integer.parseInt(cells.get(2));
    assertThat(cells.get(1)).isEqualTo("proved");
    assertThat(compared).as("frames compared").isGreaterThan(2 * frames);
    assertThat(cells.get(3)).as("frames wrong").isEqualTo("0");
    assertThat(cells.get(4))
        .as("bits compared")
        .isEqualTo(Integer.toString(compared * bitsPerFrame));
    assertThat(cells.get(5)).as("bits outside their limits").isEqualTo("0");
  }

  private static String rig(String controller, String chains, String outputs, String lamps) {
    String rig =
        """
        {"controller": "%s", "chains": [%s], "outputs": [%s], "lamps": [%s]}""";
    return rig.formatted(controller, chains, outputs, lamps);
  }

  private static String lamp(String id, String chain, int count) {
    return lamp(id, chain, count, 0);
  }

  private static String lamp(String id, String chain, int count, int from) {
    String lamp =
        """
        {"id": "%s", "pixels": [{"chain": "%s", "from": %d, "count": %d}]}""";
    return lamp.formatted(id, chain, from, count);
  }

  private static String scene(int lengthMs, int rate, String dither, String... tracks) {
    String scene =
        """
        {"id": "s", "lengthMs": %d, "framesPerSecond": %d, "loop": true, "dither": "%s",
         "tracks": [%s]}""";
    return scene.formatted(lengthMs, rate, dither, String.join(", ", tracks));
  }

  private static String track(String lamp, int lengthMs, String pattern) {
    String track =
        """
        {"lamps": ["%s"], "cues": [{"lengthMs": %d, "pattern": %s}]}""";
    return track.formatted(lamp, lengthMs, pattern);
  }
}
