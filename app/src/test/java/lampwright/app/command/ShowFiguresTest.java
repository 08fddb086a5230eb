package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** What situations ask together, as a builder sees it: two outputs of 60 mA at a supply of 100. */
class ShowFiguresTest {
  private static final String PROJECT =
      """
      {"lampwright": 1, "rig": {"supplyLimitMilliamps": 100,
       "outputs": [{"id": "o", "milliamps": 60}, {"id": "p", "milliamps": 60}],
       "lamps": [{"id": "stop", "output": "o"}, {"id": "horn", "output": "p"}],
       "inputs": [{"id": "tow", "kind": "switch"}]},
       "scenes": [
        {"id": "rest", "lengthMs": 200, "tracks": [{"lamps": ["stop"], "cues": [
          {"lengthMs": 200, "pattern": {"kind": "steady"}}]}]},
        {"id": "towed", "lengthMs": 1000, "tracks": [{"lamps": ["horn"], "cues": [
          {"lengthMs": 500, "pattern": {"kind": "steady"}}]}]}],
       "situations": [{"id": "rests", "scene": "rest"},
        {"id": "towed", "priority": 1, "scene": "towed",
         "all": [{"input": "tow", "is": "on"}]}]}
      """;

  @TempDir private Path folder;
  private Path project;

  @BeforeEach
  void file() throws IOException {
    project = Files.writeString(folder.resolve("p.lampwright.json"), PROJECT);
  }

  @Test
  void measureListsThemAndTheFinding() {
    Run run = Run.of("measure", project);

    assertThat(run.out().lines())
        .contains(
            "  ! danger: supply: situations rests, towed together draw at most 120 mA"
                + " [situations-current]",
            "Situations, in every combination that is not ruled out",
            "  Supply     at most 120 mA of 100 mA (120 %): rests, towed",
            "  Flashes    at most 1 per second of all lamps together (limit 3): rests, towed");
  }

  /** The firmware that situations need is larger than that of any scene alone. */
  @Test
  void memoryOfSituationsHasItsOwnLines() throws IOException {
    Path onAvr =
        Files.writeString(
            project, PROJECT.replace("\"rig\": {", "\"rig\": {\"controller\": \"atmega328p\", "));
    String out = Run.of("measure", onAvr).out();
    String of = "ATmega328P: all scenes and situations, ";
    assertThat(out)
        .containsPattern(
            "  Memory     "
                + of
                + "packed with player and driver \\d+ of 32256 bytes of program memory")
        .containsPattern(of + "with frame, player and stack \\d+ of 2048 bytes of working memory");
    JsonNode memory =
        new ObjectMapper()
            .readTree(Run.of("measure", onAvr, "--json").out())
            .at("/situations/memory");
    int program = memory.get("programBytes").asInt();
    int working = memory.get("workingBytes").asInt();
    assertThat(out).contains("driver " + program + " of").contains("stack " + working + " of");
    assertThat(memory.get("programBytesLimit").asInt()).isEqualTo(32_256);
    assertThat(memory.get("workingBytesLimit").asInt()).isEqualTo(2048);
    Matcher alone = Pattern.compile("packed with player and driver (\\d+)").matcher(out);
    assertThat(alone.results().skip(1).mapToInt(m -> Integer.parseInt(m.group(1))))
        .hasSize(2)
        .allMatch(bytes -> bytes + 1000 < program);
    // Without a controller nothing is known of it.
    assertThat(Run.of("measure", Files.writeString(project, PROJECT)).out())
        .doesNotContain("all scenes and situations");
  }

  @Test
  void checkHasTheFinding() {
    assertThat(Run.of("check", project).err())
        .contains("rig.supplyLimitMilliamps at line 1, column 51: supply: situations rests, towed");
  }

  @Test
  void jsonHasTheFigures() {
    JsonNode all = new ObjectMapper().readTree(Run.of("measure", project, "--json").out());

    JsonNode supply = all.at("/situations/supply");
    assertThat(supply.get("mostMilliamps").asDouble()).isEqualTo(120);
    assertThat(supply.get("limitMilliamps").asDouble()).isEqualTo(100);
    assertThat(supply.get("exact").asBoolean()).isFalse();
    assertThat(supply.get("active").get(1).asString()).isEqualTo("towed");
    assertThat(all.at("/situations/flashes/mostGeneralFlashesInASecond").asInt()).isEqualTo(1);
    assertThat(all.at("/situations/darkLamps").size()).isZero();
    JsonNode alone =
        new ObjectMapper().readTree(Run.of("measure", Run.sample("bench-rgbw"), "--json").out());
    assertThat(alone.has("situations")).isFalse();
  }
}
