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
            "Scene s: 200 frames at 50 frames/s, 4.000 s, loops",
            "! supply: draws 366 mA in frame 0",
            "the limit is 200 mA (the rig's supplyLimitMilliamps)",
            "-> set currentCap",
            "! battery: feeds this rig",
            "! whole model: 5 flashes in the second",
            "! chain c: is driven with 3.30 V",
            "! lamp l: flashes 300.0 times a minute",
            "faster than a real direction indicator, 60 to 120",
            "Supply     peak 366 mA of 200 mA",
            "Battery    lasts 4.3 h",
            "Chain      c",
            "Voltage    c",
            "Resistor   o                 43 ohm (E24)",
            "Memory     raw table (c, bin, hex) 3800 bytes; packed ",
            "Lamp       l",
            "Flashes    at most 5");
  }

  @Test
  void checkSaysTheSameCautionsAndEndsWell() throws IOException {
    Run run = Run.of("check", project());
    assertThat(run.code()).isZero();
    assertThat(run.err())
        .contains("caution: supply: draws 366 mA", "caution: lamp l: flashes 300.0 times a minute")
        .contains("caution: chain c: is driven with 3.30 V");
    assertThat(run.out()).containsPattern("no errors, \\d+ cautions");
  }

  @Test
  void jsonHoldsTheFigures() throws IOException {
    Run run = Run.of("measure", project(), "--json");
    JsonNode root = new ObjectMapper().readTree(run.out());
    assertThat(root.get("lampwrightMeasure").asInt()).isEqualTo(1);
    JsonNode scene = root.get("scenes").get(0);
    assertThat(scene.get("supply").get("peakMilliamps").asDouble()).isCloseTo(366, within(1e-3));
    assertThat(scene.get("supply").get("meanMilliamps").asDouble()).isCloseTo(186, within(1e-3));
    assertThat(scene.get("supply").get("batteryHours").asDouble())
        .isCloseTo(800 / 186.0, within(1e-3));
    assertThat(scene.get("chains").get(0).get("wireUs").asDouble())
        .isCloseTo(6 * 24 * 1.25 + 300, within(1e-3));
    assertThat(scene.get("outputs").get(0).get("resistor").get("ohms").asDouble()).isEqualTo(43);
    assertThat(scene.get("packedBytes").asInt()).isBetween(1, 200);
    JsonNode lamp = scene.get("lamps").get(0);
    assertThat(lamp.get("flashes").get("groupsPerMinute").asDouble()).isCloseTo(300, within(0.1));
    assertThat(lamp.get("flashCaution").get("passes").asBoolean()).isFalse();
    assertThat(scene.get("advice").get(0).get("weight").asString()).isEqualTo("harm");
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

  @Test
  void unreachableColourIsReportedWithWhatIsShown() {
    Run run = Run.of("check", sample("recovery-tractor"));
    assertThat(run.err())
        .contains("scenes[0].tracks[0].cues[0].pattern.colour: x 0.5780 y 0.4110 can't be mixed")
        .contains("hardly to be seen");
  }

  @Test
  void unknownSceneIsAWrongCommandLine() {
    Run run = Run.of("measure", sample("bench-rgbw"), "--scene", "none");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("needs a scene of the project: walk, ramps");
  }
}
