package lampwright.engine.review;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;
import org.junit.jupiter.api.Test;

/** Findings about situations together. Outputs o and p draw 400 mA each. */
class ShowFindingsTest {
  private static List<String> findings(String rig, String situations) {
    String text =
        """
        {"lampwright": 1, "rig": {"outputs": [{"id": "o", "milliamps": 400},
          {"id": "p", "milliamps": 400}], %s,
         "lamps": [{"id": "l", "output": "o"}, {"id": "m", "output": "p"}],
         "inputs": [{"id": "x", "kind": "switch"}]},
         "scenes": [
          {"id": "one", "lengthMs": 100, "tracks": [{"lamps": ["l"], "cues": [{"lengthMs": 100,
            "pattern": {"kind": "steady"}}]}]},
          {"id": "two", "lengthMs": 100, "tracks": [{"lamps": ["m"], "cues": [{"lengthMs": 100,
            "pattern": {"kind": "steady"}}]}]},
          {"id": "three", "lengthMs": 500, "tracks": [{"lamps": ["l"], "cues": [{"lengthMs": 100,
            "pattern": {"kind": "steady"}}]}]},
          {"id": "four", "lengthMs": 500, "tracks": [{"lamps": ["m"], "cues": [{"lengthMs": 100,
            "pattern": {"kind": "steady"}}]}]},
          {"id": "dark", "lengthMs": 100, "tracks": [{"lamps": ["m"]}]},
          {"id": "slow", "lengthMs": 100, "framesPerSecond": 25, "tracks": [{"lamps": ["m"]}]}],
         "situations": [%s]}
        """
            .formatted(rig, situations);
    ReadResult read = ProjectReader.read("p", text.getBytes(UTF_8));
    assertThat(read.problems()).isEmpty();
    Project project = read.project().orElseThrow();
    return Review.measureShow(project).stream()
        .flatMap(measure -> Review.ofShow(project, measure).stream())
        .map(f -> f.severity().key() + ": " + f.place().orElseThrow().path() + ": " + f.text())
        .toList();
  }

  private static String pair(String one, String two, String start) {
    return """
        {"id": "a", "scene": "%s", "start": "%s"}, {"id": "b", "priority": 1, "scene": "%s",
         "start": "%s", "all": [{"input": "x", "is": "on"}]}"""
        .formatted(one, start, two, start);
  }

  // 800 mA together, 400 mA each.
  @Test
  void supplyThatEachSceneKeepsCanBeExceededTogether() {
    assertThat(findings("\"supplyLimitMilliamps\": 799", pair("one", "two", "shared")))
        .containsExactly(
            "danger: rig.supplyLimitMilliamps: supply: situations a, b together draw at most 800 mA;"
                + " limit 799 mA (supply current limit of the rig): lower the levels in these scenes,"
                + " let fewer of their lamps be on together, or use a larger supply and thicker wire;"
                + " the current limit of the project applies to each scene alone; an overloaded"
                + " supply or wire overheats [situations-current]");
    assertThat(findings("\"supplyLimitMilliamps\": 800", pair("one", "two", "shared"))).isEmpty();
  }

  // (400 - 0) / 800 = 50 %; of pixels that draw nothing, idle is nothing.
  @Test
  void ceilingMakesOfTheDangerANoteOfHowFarFramesAreDimmed() {
    String limit = "\"supplyLimitMilliamps\": 400, \"ceiling\": true";
    assertThat(findings(limit, pair("one", "two", "shared")))
        .containsExactly(
            "note: rig.supplyLimitMilliamps: supply: situations a, b together would draw at most"
                + " 800 mA: such frames are dimmed to at worst about 50 % as they are sent; limit"
                + " 400 mA (supply current limit of the rig): lower the levels in these scenes, or"
                + " use a larger supply, to see them undimmed; only the exported firmware and the"
                + " rehearsed frames have this limit [situations-ceiling]");
    // The chip of each pixel alone draws more: nothing can be dimmed below it.
    String idle =
        "\"chains\": [{\"id\": \"c\", \"pixelType\": \"ws2812b\", \"pixels\": 500}],"
            + " \"supplyLimitMilliamps\": 400, \"ceiling\": true";
    assertThat(findings(idle, pair("one", "two", "shared")))
        .singleElement()
        .asString()
        .startsWith("danger: ");
  }

  // 1.25 x 0.6 A = 0.75 A.
  @Test
  void fuseOfTheBatteryHasToCarryNoMoreThanTheCeilingLetsThrough() {
    String rig =
        "\"supplyLimitMilliamps\": 600, \"ceiling\": true,"
            + " \"battery\": {\"milliampHours\": 1000, \"fuseAmps\": %s}";
    assertThat(findings(rig.formatted("0.75"), pair("one", "two", "shared"))).hasSize(1);
    assertThat(findings(rig.formatted("0.7"), pair("one", "two", "shared")))
        .anySatisfy(f -> assertThat(f).contains("together draw at most 0.60 A"));
  }

  // What a scene alone exceeds is told of the scene.
  @Test
  void whatASceneExceedsAloneIsNotToldAgain() {
    assertThat(findings("\"supplyLimitMilliamps\": 300", "{\"id\": \"a\", \"scene\": \"one\"}"))
        .isEmpty();
    assertThat(findings("\"supplyLimitMilliamps\": 300", pair("one", "two", "shared"))).hasSize(1);
  }

  // 1.25 x 0.8 A = 1 A; of one scene 0.5 A.
  @Test
  void fuseOfTheBatteryHasToCarryAll() {
    String battery =
        "\"supplyLimitMilliamps\": 2000, \"battery\": {\"milliampHours\": 1000, \"fuseAmps\": %s}";
    assertThat(findings(battery.formatted("0.75"), pair("one", "two", "shared")))
        .containsExactly(
            "caution: rig.battery.fuseAmps: battery: its fuse is 0.75 A, situations a, b together"
                + " draw at most 0.80 A; a fuse of less than 1.00 A can blow in normal use (common"
                + " practice: fuse for 1.25 of the peak): use a larger fuse if the wires are rated"
                + " for it, or draw less [situations-fuse]");
    assertThat(findings(battery.formatted("1"), pair("one", "two", "shared"))).isEmpty();
    // The scene alone is over it.
    assertThat(findings(battery.formatted("0.4"), pair("one", "two", "shared"))).isEmpty();
  }

  // Twice a second each; in step they flash at the same time.
  @Test
  void flashersOutOfStepAreCountedTogether() {
    String limit = "\"supplyLimitMilliamps\": 2000";
    assertThat(findings(limit, pair("three", "four", "restart")))
        .singleElement()
        .asString()
        .startsWith(
            "caution: situations: whole model: at most 4 flashes per second of all lamps together in"
                + " situations a, b; limit 3 per second");
    assertThat(findings(limit, pair("three", "four", "shared"))).isEmpty();
  }

  @Test
  void lampThatStaysDarkIsToldOf() {
    assertThat(findings("\"supplyLimitMilliamps\": 2000", pair("one", "dark", "shared")))
        .containsExactly(
            "caution: rig.lamps[1]: lamp m: stays dark: no situation that can have it lights it:"
                + " light it in one of their scenes, or correct priorities and conditions"
                + " [lamp-dark-in-situations]");
  }

  @Test
  void whatCannotBePlayedIsNotMeasured() {
    assertThat(findings("\"supplyLimitMilliamps\": 1", pair("one", "slow", "shared"))).isEmpty();
    assertThat(findings("\"supplyLimitMilliamps\": 1", "")).isEmpty();
  }
}
