package lampwright.app.command;

import static lampwright.app.command.Run.sample;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

class MeasureTest {
  private static final String PROJECT =
      """
      {"lampwright": 1, "name": "N",
       "rig": {"supplyLimitMilliamps": 200, "dataVolts": 3.3, "curve": {"kind": "linear"},
         "feed": {"awg": 30, "supplyMm": 1000},
         "battery": {"milliampHours": 1000},
         "controller": "attiny85",
         "chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 6}],
         "outputs": [{"id": "o", "supply": "voltage", "ledsInSeries": 2}],
         "lamps": [{"id": "l", "function": "direction-indicator",
                    "pixels": [{"chain": "c", "count": 6}]},
                   {"id": "p", "output": "o"}]},
       "scenes": [{"id": "s", "lengthMs": 4000, "tracks": [
         {"lamps": ["l"], "cues": [{"lengthMs": 4000, "pattern":
           {"kind": "flash", "colour": {"drive": {"r": 1, "g": 1, "b": 1}},
            "onMs": 100, "offMs": 100}}]}]}]}
      """;

  @TempDir Path folder;

  private Path project() throws IOException {
    return Files.writeString(folder.resolve("p.lampwright.json"), PROJECT);
  }

  @Test
  void whatPassesALimitStandsFirstGravestFirst() throws IOException {
    Run run = Run.of("measure", project());
    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .containsSubsequence(
            "! danger: battery: no fuse is set",
            "! caution: chain c: data level is 3.30 V",
            "Scene s: 200 frames at 50 frames/s, 4.000 s, loops",
            "! danger: supply, scene s, 0.00 s: draws 366 mA",
            "limit 200 mA (supply current limit of the rig)",
            "-> limit the current",
            "! danger: lamp l, scene s, 0.00 s: 5 flashes per second (whole lamp)",
            "! caution: lamp l, scene s: 300 flashes/min",
            "faster than a real direction indicator, 60 to 120",
            "Supply     peak 366 mA of 200 mA",
            "Battery    run time 4.3 h",
            "Chain      c",
            "Voltage    c",
            "Wires      c                 lead 0.37 A of 0.25 A (AWG 30)",
            "Resistor   o                 43 ohm (E24)",
            "Memory     raw table (c, bin, hex) 3800 bytes; packed ",
            "Lamp       l",
            "300 flashes/min, on 0.10 s, off 0.10 s",
            "Flash check  fails, lamp l: 5 flashes per second from 0.00 s (limit 3, WCAG 2.2");
  }

  @Test
  void checkSaysTheSameCautionsAndEndsWell() throws IOException {
    Run run = Run.of("check", project());
    assertThat(run.code()).isZero();
    assertThat(run.err())
        .contains(
            "danger: rig.supplyLimitMilliamps at line ", "supply, scene s, 0.00 s: draws 366 mA")
        .contains("caution: lamp l, scene s: 300 flashes/min")
        .contains("chain c: data level is 3.30 V");
    assertThat(run.out()).containsPattern("no errors, \\d+ dangers, \\d+ cautions, \\d+ notes?");
  }

  @Test
  void jsonHoldsTheFigures() throws IOException {
    Run run = Run.of("measure", project(), "--json");
    JsonNode root = new ObjectMapper().readTree(run.out());
    assertThat(root.get("lampwrightMeasure").asInt()).isEqualTo(2);
    JsonNode scene = root.get("scenes").get(0);
    assertThat(scene.get("supply").get("peakMilliamps").asDouble()).isCloseTo(366, within(1e-3));
    assertThat(scene.get("supply").get("meanMilliamps").asDouble()).isCloseTo(186, within(1e-3));
    assertThat(scene.get("supply").get("batteryHours").asDouble())
        .isCloseTo(800 / 186.0, within(1e-3));
    assertThat(scene.get("chains").get(0).get("wireUs").asDouble())
        .isCloseTo(6 * 24 * 1.25 + 300, within(1e-3));
    JsonNode output = scene.get("outputs").get(0);
    assertThat(output.get("headroomVolts").asDouble()).isCloseTo(0.8, within(1e-6));
    assertThat(output.get("resistor").get("ohms").asDouble()).isEqualTo(43);
    // By hand: (5.25 - 4.2) / 43 = 24.4 mA.
    assertThat(output.get("resistor").get("milliampsAtHighSupply").asDouble())
        .isCloseTo(24.42, within(0.01));
    JsonNode voltage = scene.get("chains").get(0).get("voltage");
    assertThat(voltage.get("feedAmps").asDouble()).isCloseTo(0.366, within(1e-6));
    // By hand: 0.366 A through 2 m of AWG 30 (0.3386 ohm/m by handbook tables).
    assertThat(voltage.get("firstVolts").asDouble()).isCloseTo(5 - 0.248, within(0.001));
    assertThat(voltage.get("stripAmps").asDouble()).isCloseTo(0.305, within(1e-6));
    assertThat(voltage.get("feedLimitAmps").asDouble()).isCloseTo(0.255, within(0.001));
    assertThat(voltage.has("fuseAmps")).isFalse();
    // By hand: a fuse of at least 1.25 x 0.366 = 0.46 A; AWG 28 may carry 0.41 A, AWG 26 0.64 A.
    assertThat(voltage.get("remedies").get(0).get("awg").asInt()).isEqualTo(26);
    // No fuse protects AWG 30 (0.255 A) and lets 0.366 A through.
    assertThat(scene.get("supply").has("batteryFuseAmps")).isFalse();
    assertThat(scene.get("packedBytes").asInt()).isBetween(1, 200);
    JsonNode lamp = scene.get("lamps").get(0);
    assertThat(lamp.get("flashes").get("groupsPerMinute").asDouble()).isCloseTo(300, within(0.1));
    assertThat(lamp.get("flashCaution").get("passes").asBoolean()).isFalse();
    JsonNode first = scene.get("findings").get(0);
    assertThat(first.get("code").asString()).isEqualTo("supply-current");
    assertThat(first.get("severity").asString()).isEqualTo("danger");
    assertThat(first.get("figures").get("current").get("value").asDouble())
        .isCloseTo(366, within(1e-3));
    assertThat(first.get("figures").get("limit").get("unit").asString()).isEqualTo("mA");
  }

  /**
   * 4,000 pixels of 3 bytes for 400 frames: 4,800,000 bytes, above 4 MiB. The bound is that of
   * docs/packed.md: the table, 37 bytes and 8 for each 4,096 frames.
   */
  @Test
  void largeTablesHaveABound() throws IOException {
    String project =
        """
        {"lampwright": 1, "name": "large",
         "rig": {"chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 4000}],
                 "lamps": [{"id": "l", "pixels": [{"chain": "c", "count": 4000}]}]},
         "scenes": [{"id": "s", "lengthMs": 8000, "framesPerSecond": 50,
           "tracks": [{"lamps": ["l"],
             "cues": [{"lengthMs": 8000, "pattern": {"kind": "flicker"}}]}]}]}
        """;
    Path file = Files.writeString(folder.resolve("large.lampwright.json"), project);
    Run run = Run.of("measure", file, "--json");
    assertThat(run.code()).isZero();
    JsonNode scene = new ObjectMapper().readTree(run.out()).get("scenes").get(0);
    assertThat(scene.get("tableBytes").asInt()).isEqualTo(4_800_000);
    assertThat(scene.has("packedBytes")).isFalse();
    assertThat(scene.get("packedBytesAtMost").asInt()).isEqualTo(4_800_045);
    assertThat(Run.of("measure", file).out())
        .contains(
            "packed at most 4800045 bytes (measure does not pack tables above 4 MiB);"
                + " 12000 bytes per frame");
  }

  @Test
  void figuresAreTheSameUnderEveryLocale() {
    Locale before = Locale.getDefault();
    try {
      String first = Run.of("measure", sample("recovery-tractor")).out();
      for (String tag : new String[] {"tr-TR", "de-DE", "ar-EG-u-nu-arab"}) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertThat(Run.of("measure", sample("recovery-tractor")).out()).isEqualTo(first);
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  /** A difference of less than 0.005 in CIE 1976 u'v' is not to be seen, and no finding. */
  @Test
  void colourThatIsAHairOutOfReachIsNoFinding() {
    Run run = Run.of("check", sample("recovery-tractor"));
    assertThat(run.err()).doesNotContain("colour-out-of-reach");
  }

  /** A colour cycle has hues of its own, and shows none of the colour that is stated beside it. */
  @Test
  void colourThatAPatternNeverShowsIsNoFinding() throws IOException {
    String text =
        """
        {"lampwright": 1,
         "rig": {"chains": [{"id": "c", "pixelType": "ws2812b-2020", "pixels": 1}],
                 "lamps": [{"id": "l", "pixels": [{"chain": "c", "from": 0, "count": 1}]}]},
         "scenes": [{"id": "s", "lengthMs": 1000, "tracks": [{"lamps": ["l"], "cues": [
           {"lengthMs": 1000, "pattern": {"kind": "%s", "colour": {"signal": "blue"}}}]}]}]}
        """;
    Path shown = Files.writeString(folder.resolve("shown.json"), text.formatted("steady"));
    Path never = Files.writeString(folder.resolve("never.json"), text.formatted("colour-cycle"));
    assertThat(Run.of("check", shown).err()).contains("colour-out-of-reach");
    assertThat(Run.of("check", never).err()).doesNotContain("colour-out-of-reach");
  }

  @Test
  void checkGivesJsonWithPlaces() throws IOException {
    Run run = Run.of("check", project(), "--json");
    JsonNode root = new ObjectMapper().readTree(run.out());
    assertThat(root.get("lampwrightCheck").asInt()).isEqualTo(1);
    assertThat(root.get("errors").asInt()).isZero();
    assertThat(root.get("dangers").asInt()).isPositive();
    JsonNode first = root.get("findings").get(0);
    assertThat(first.get("path").asString()).isEqualTo("rig.supplyLimitMilliamps");
    assertThat(first.get("line").asInt()).isPositive();
    assertThat(run.err()).isEmpty();
  }

  @Test
  void manyFindingsOfAKindAreCounted() throws IOException {
    String cues =
        "{\"startMs\": 5000, \"lengthMs\": 1, \"pattern\": {\"kind\": \"steady\"}},".repeat(102);
    Path many =
        Files.writeString(
            folder.resolve("many.lampwright.json"),
            """
            {"lampwright": 1, "rig": {"outputs": [{"id": "o"}],
              "lamps": [{"id": "l", "output": "o"}]}, "scenes": [
              {"id": "s", "lengthMs": 1000, "tracks": [{"lamps": ["l"], "cues": [
            """
                + cues.substring(0, cues.length() - 1)
                + "]}]}]}");
    Run run = Run.of("check", many);
    assertThat(run.err().lines().filter(line -> line.endsWith("[cue-never-seen]"))).hasSize(101);
    assertThat(run.err()).contains("many.lampwright.json: caution: 2 more [cue-never-seen]");
    assertThat(run.out()).contains("102 cautions");
  }

  @Test
  void strictCheckEndsWith1WhereThereIsADanger() throws IOException {
    assertThat(Run.of("check", project()).code()).isZero();
    assertThat(Run.of("check", project(), "--strict").code()).isEqualTo(1);
  }

  @Test
  void unknownSceneIsAWrongCommandLine() {
    Run run = Run.of("measure", sample("bench-rgbw"), "--scene", "none");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("must be one of walk, ramps");
  }
}
