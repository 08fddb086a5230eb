package lampwright.engine.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said of supply, wires, outputs and battery. One white pixel of a ws2812b draws 61 mA. */
class PowerFindingsTest {
  private String rig = "";
  private String type = "ws2812b";
  private int pixels = 8;
  private String outputs = "";
  private String patterns =
      "{\"kind\": \"steady\", \"colour\": {\"drive\": {\"r\": 1, \"g\": 1, \"b\": 1}}}";

  private List<Finding> findings() {
    String json =
        """
        {"lampwright": 1, "rig": {"supplyLimitMilliamps": 20000, "curve": {"kind": "linear"}, %s
          "chains": [{"id": "roof", "pixelType": "%s", "pixels": %d}], "outputs": [%s],
          "lamps": [{"id": "bar", "pixels": [{"chain": "roof", "count": %d}]}]},
         "scenes": [{"id": "on", "lengthMs": 1000, "framesPerSecond": 20, "loop": true,
           "tracks": [{"lamps": ["bar"], "cues": [{"lengthMs": 1000, "pattern": %s}]}]}]}"""
            .formatted(rig, type, pixels, outputs, pixels, patterns);
    ReadResult read = ProjectReader.read("p.json", json.getBytes(StandardCharsets.UTF_8));
    assertThat(read.problems()).isEmpty();
    Project project = read.project().orElseThrow();
    SceneReport report = SceneReport.of(FrameTable.of(project.rig(), project.scenes().get(0)));
    return new Review(List.of()).of(project, List.of(report));
  }

  private List<String> codes() {
    return findings().stream().map(f -> f.code().key()).toList();
  }

  private String text(String code) {
    return findings().stream()
        .filter(f -> f.code().key().equals(code))
        .map(Finding::text)
        .findFirst()
        .orElseThrow();
  }

  // ---- Pixels: WS2812B datasheet, see FACTS of this file's project.

  /**
   * WS2812B datasheet: behaviour is stated for 4.5 to 5.5 V; blue and green need 3.0 to 3.4 V, and
   * below 3.5 V it fails; 5.3 V is its absolute maximum.
   */
  @ParameterizedTest
  @CsvSource({
    "5.0,",
    "4.5,",
    "3.6, pixel-dim-voltage",
    "3.5, pixel-dim-voltage",
    "3.4, pixel-under-voltage",
    "5.3,",
    "5.4, pixel-over-voltage"
  })
  void supplyIsHeldAgainstWhatPixelsStand(double volts, String code) {
    // The level of a shifter that follows the supply.
    rig = "\"supplyVolts\": %s, \"dataVolts\": %s,".formatted(volts, volts);
    assertThat(codes()).isEqualTo(code == null ? List.of() : List.of(code));
  }

  /** Input at most VDD + 0.5 V: 5 V into pixels on 3.7 V is not, 4.2 V is. */
  @ParameterizedTest
  @CsvSource({
    "5, 3.7, data-level-high",
    "4.2, 3.7,",
    "5, 4.5,",
    "3.3, 5, data-level-low",
    "3.5, 5,"
  })
  void dataLevelIsHeldBothWays(double data, double supply, String code) {
    rig = "\"supplyVolts\": %s, \"dataVolts\": %s,".formatted(supply, data);
    assertThat(codes())
        .filteredOn(c -> c.startsWith("data"))
        .isEqualTo(code == null ? List.of() : List.of(code));
  }

  /** A level that suits the supply may be too high for a first pixel that gets less. */
  @Test
  void dataLevelIsHeldAgainstWhatTheFirstPixelGets() {
    // By hand: 0.488 A through 2 x 2 m of AWG 28 (0.2129 ohm/m) drop 0.416 V.
    rig = "\"dataVolts\": 5.3, \"feed\": {\"awg\": 28, \"supplyMm\": 2000},";
    assertThat(text("data-level-high"))
        .contains("chain roof, scene on", "data level is 5.30 V", "5.08 V maximum", "gets 4.58 V");
    rig = "\"dataVolts\": 5.3, \"feed\": {\"awg\": 18, \"supplyMm\": 2000},";
    assertThat(codes()).doesNotContain("data-level-high");
  }

  /** WS2812B-2020 datasheet: VIH at least 2.7 V, so that 3.3 V is in range. */
  @Test
  void smallPartTakes3V3() {
    type = "ws2812b-2020";
    rig = "\"dataVolts\": 3.3,";
    assertThat(codes()).isEmpty();
  }

  /** RP2040: pins of 3.3 V, below 0.7 x 5 V. An AVR drives to its supply. */
  @ParameterizedTest
  @CsvSource({"rp2040, data-level-low", "atmega328p,", "attiny85,"})
  void controllerGivesTheDataLevel(String controller, String code) {
    rig = "\"controller\": \"%s\",".formatted(controller);
    assertThat(codes())
        .filteredOn(c -> c.startsWith("data"))
        .isEqualTo(code == null ? List.of() : List.of(code));
  }

  @Test
  void levelAboveThePinsNeedsAShifter() {
    rig = "\"controller\": \"rp2040\", \"dataVolts\": 5,";
    assertThat(codes()).contains("data-level-stated").doesNotContain("data-level-low");
    assertThat(text("data-level-stated"))
        .contains("the data voltage level is set to 5.00 V", "the controller's pins output 3.30 V");
  }

  // ---- Wires.

  /** By hand: 8 pixels draw 0.488 A; AWG 30 is 0.0509 mm2 and may carry 0.25 A (5 A/mm2). */
  @Test
  void thinLeadHeats() {
    rig = "\"feed\": {\"awg\": 30},";
    assertThat(codes()).containsExactly("lead-heat", "lead-unfused");
    // 1.25 of 0.488 A asks for a fuse of 0.63 A, and that for 0.126 mm2: AWG 26 is 0.129 mm2.
    assertThat(text("lead-heat"))
        .contains("a supply lead carries 0.49 A", "rated for 0.25 A", "AWG 26", "fused at 0.63 A");
  }

  /**
   * 60 pixels draw 3.66 A in all; what is recommended passes no other limit. By hand: 60 x 61 / 2 x
   * 61 mA through 2 x 17 mm of 0.1 mm2 (0.00586 ohm) drop 0.65 V, so that the last has 4.3 V.
   */
  @Test
  void longStripIsFedAtBothEnds() {
    pixels = 60;
    rig = "\"feed\": {\"awg\": 14},";
    assertThat(codes()).containsExactly("strip-heat", "chain-dim-voltage", "lead-unfused");
    assertThat(text("strip-heat"))
        .contains("carry 3.60 A", "rated for 2.56 A", "IPC-2221", "feed it at both ends");
    rig = "\"feed\": {\"awg\": 14, \"ends\": \"both\"},";
    assertThat(codes()).doesNotContain("strip-heat", "lead-heat");
  }

  @Test
  void pixelsThatGetTooLittleAreNamed() {
    pixels = 61;
    // Thick lead, thin wire between: 61 x 61 mA and less, pixel by pixel, through AWG 24.
    rig = "\"feed\": {\"awg\": 10, \"stripAwg\": 22, \"pitchMm\": 60},";
    assertThat(text("chain-dim-voltage"))
        .containsPattern("pixels \\d+-60 are under-voltage: pixel 60 gets \\d\\.\\d\\d V")
        .contains("specified from 4.50 V", "scene on, 0.00 s");
    rig = "\"feed\": {\"awg\": 10, \"stripAwg\": 28, \"pitchMm\": 60},";
    assertThat(codes()).contains("chain-voltage-drop").doesNotContain("chain-dim-voltage");
    assertThat(text("chain-voltage-drop")).contains("fail below 3.50 V", "no lead alone is enough");
  }

  /** Fuse at least 1.25 of 0.488 A = 0.61 A, at most what AWG 24 (0.205 mm2, 1.02 A) may carry. */
  @ParameterizedTest
  @CsvSource({"0.63,", "1,", "0.6, lead-fuse-small", "2, lead-fuse-large"})
  void leadFuseIsHeldBothWays(double amps, String code) {
    rig = "\"feed\": {\"awg\": 24, \"fuseAmps\": %s},".formatted(amps);
    assertThat(codes()).isEqualTo(code == null ? List.of() : List.of(code));
  }

  @Test
  void supplyThatGivesNoMoreThanTheWiresCarryNeedsNoFuse() {
    rig = "\"supplyLimitMilliamps\": 1000, \"feed\": {\"awg\": 24},";
    rig = rig.replace("\"supplyLimitMilliamps\": 1000, ", "");
    assertThat(codes()).containsExactly("lead-unfused");
    assertThat(text("lead-unfused")).contains("can deliver 20.00 A", "rated for 1.02 A");
  }

  @Test
  void chainWithWiresOfItsOwnIsJudgedByThem() {
    rig = "\"feed\": {\"awg\": 18, \"fuseAmps\": 1},";
    assertThat(codes()).isEmpty();
  }

  // ---- Outputs.

  private List<String> output(String fields) {
    outputs = "{\"id\": \"step\", %s}".formatted(fields);
    return codes();
  }

  /** Practice: a constant-current driver needs 0.5 to 1 V above its LEDs. */
  @ParameterizedTest
  @CsvSource({
    "4, 3.2, output-cannot-light",
    "1, 5, output-cannot-light",
    "1, 4.6, output-headroom",
    "1, 4.5, output-headroom-tight",
    "2, 2.1, output-headroom-tight",
    "1, 4.0,",
    "1, 2.1,"
  })
  void constantCurrentNeedsHeadroom(int leds, double forward, String code) {
    assertThat(output("\"ledsInSeries\": %d, \"forwardVolts\": %s".formatted(leds, forward)))
        .isEqualTo(code == null ? List.of() : List.of(code));
  }

  @Test
  void fourLedsOn5VSayWhatTheyNeed() {
    output("\"ledsInSeries\": 4, \"forwardVolts\": 3.2");
    assertThat(text("output-cannot-light"))
        .contains("output step: 4 LEDs in series need 12.80 V; available: 5.00 V");
  }

  /** By hand: 0.1 V over 5.1 ohm; at 5.25 V 0.35 V, 68.6 mA. */
  @Test
  void resistorThatDropsLittleSaysWhatAHighSupplyDoes() {
    assertThat(output("\"supply\": \"voltage\", \"forwardVolts\": 4.9"))
        .containsExactly("resistor-margin");
    assertThat(text("resistor-margin"))
        .contains("drops 0.10 V", "gives 68.6 mA in place of 19.6 mA", "at least 1.00 V");
    assertThat(output("\"supply\": \"voltage\", \"forwardVolts\": 4")).isEmpty();
  }

  /** A pin gives its own level: 3.3 V less 3.1 V leaves 0.2 V. */
  @Test
  void stringOnAPinHasThePinsVoltage() {
    rig = "\"controller\": \"rp2040\", \"dataVolts\": 5,";
    assertThat(output("\"drive\": \"pin\", \"forwardVolts\": 3.1"))
        .containsExactly("resistor-margin", "data-level-stated");
    assertThat(output("\"drive\": \"driver\", \"supply\": \"voltage\", \"forwardVolts\": 3.1"))
        .containsExactly("data-level-stated");
  }

  @Test
  void outputWithoutCurrentIsNotJudged() {
    assertThat(output("\"milliamps\": 0, \"ledsInSeries\": 9")).isEmpty();
    assertThat(output("\"milliamps\": 0.001, \"supply\": \"voltage\"")).isEmpty();
  }

  // ---- Battery.

  private List<String> battery(String fields) {
    rig = "\"dataVolts\": 5, \"battery\": {\"milliampHours\": 2000%s},".formatted(fields);
    return codes();
  }

  @Test
  void fuseClearsTheDangerOfAPack() {
    assertThat(battery("")).containsExactly("battery-unfused", "battery-volts-unstated");
    assertThat(battery(", \"packVolts\": 7.4, \"regulator\": \"buck\", \"fuseAmps\": 1")).isEmpty();
  }

  /** 0.488 A at 5 V are 0.366 A at 7.4 V behind 90 %; 1.25 of that 0.458 A. */
  @ParameterizedTest
  @CsvSource({"0.46,", "0.45, battery-fuse-small"})
  void packFuseCarriesThePeak(double amps, String code) {
    assertThat(battery(", \"packVolts\": 7.4, \"regulator\": \"buck\", \"fuseAmps\": " + amps))
        .isEqualTo(code == null ? List.of() : List.of(code));
  }

  /** 1 A out of 7.4 V is 1.33 A at 5 V; AWG 24 may carry 1.02 A. */
  @Test
  void packFuseIsHeldAgainstTheWires() {
    String pack =
        "\"battery\": {\"milliampHours\": 2000, \"packVolts\": 7.4, \"regulator\": \"buck\","
            + " \"fuseAmps\": 1},";
    rig = pack + "\"feed\": {\"awg\": 24},";
    assertThat(codes()).containsExactly("battery-fuse-large");
    assertThat(text("battery-fuse-large"))
        .contains(
            "its fuse of 1 A lets 1.33 A into the supply wires of chain roof", "rated for 1.02 A");
    rig = pack + "\"feed\": {\"awg\": 24, \"fuseAmps\": 1},";
    assertThat(codes()).isEmpty();
    rig = pack + "\"feed\": {\"awg\": 20},";
    assertThat(codes()).isEmpty();
  }

  /** 7.4 V is 8.4 V full; the WS2812B stands 5.3 V. A boost lets through what is above its own. */
  @Test
  void packWithoutRegulatorIsHeldAgainstPixels() {
    assertThat(battery(", \"packVolts\": 7.4, \"fuseAmps\": 1"))
        .containsExactly("battery-over-voltage");
    assertThat(text("battery-over-voltage"))
        .contains("8.40 V when full (7.40 V nominal)", "5.30 V maximum", "regulator of 5 V");
    assertThat(battery(", \"packVolts\": 3.7, \"fuseAmps\": 1"))
        .containsExactly("battery-under-voltage");
    assertThat(battery(", \"packVolts\": 7.4, \"regulator\": \"boost\", \"fuseAmps\": 1"))
        .containsExactly("battery-over-voltage", "battery-regulator");
  }

  @ParameterizedTest
  @ValueSource(strings = {"buck", "linear"})
  void regulatorThatLowersNeedsMoreThanItGives(String kind) {
    assertThat(
            battery(", \"packVolts\": 3.7, \"fuseAmps\": 2, \"regulator\": \"%s\"".formatted(kind)))
        .containsExactly("battery-regulator");
    assertThat(text("battery-regulator"))
        .contains("must be more than its output of 5.00 V", "boost");
  }
}
