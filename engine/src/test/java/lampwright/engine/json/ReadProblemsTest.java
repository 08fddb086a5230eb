package lampwright.engine.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Scene;
import org.junit.jupiter.api.Test;

class ReadProblemsTest {
  private static final String RIG =
      """
      {"lampwright": 1, "rig": {"chains": [{"id": "a", "pixelType": "ws2812b", "pixels": 9}],
       "lamps": [{"id": "l", "pixels": [{"chain": "a"}]}]}, "scenes": [
      """;

  private static ReadResult read(String json) {
    return ProjectReader.read("p", json.getBytes(UTF_8));
  }

  private static List<String> texts(ReadResult read) {
    return read.problems().stream().map(Problem::text).toList();
  }

  @Test
  void everyProblemOfAFileIsReportedInOrder() {
    ReadResult read =
        read(
            """
            {
              "lampwright": 1,
              "nmae": "x",
              "rig": {
                "supplyVolts": 100,
                "chains": [
                  {"id": "a", "pixelType": "ws2812", "pixels": 9},
                  {"id": "a", "pixelType": "ws2812b", "pixels": "9"}
                ],
                "lamps": [
                  {"id": "l", "pixels": [{"chain": "a", "from": -1}, {"chain": "b"}]},
                  {"id": "m", "output": "o"}
                ]
              },
              "scenes": [
                {"id": "s", "lengthMs": "long", "tracks": [
                  {"lamps": ["l", "n"], "cues": [
                    {"lengthMs": 0, "pattern": {"kind": "flash", "onMs": -1, "level": 2}}]}]}
              ]
            }
            """);

    assertThat(read.project()).isEmpty();
    assertThat(texts(read))
        .containsExactly(
            "nmae: unknown field at line 3, column 3: must be one of lampwright, $schema, name, model, pixelTypes,"
                + " rig, pictures, scenes, situations, presets; did you mean \"name\"?",
            "rig.supplyVolts: 100 at line 5, column 20: must be between 1 and 60",
            "rig.chains[0].pixelType: \"ws2812\" at line 7, column 32: must be a built-in pixel type"
                + " or one of pixelTypes; did you mean \"ws2812b\"?",
            "rig.chains[1].id: \"a\" at line 8, column 14: must be unique; chains[0] has"
                + " the same",
            "rig.chains[1].pixels: \"9\" (string) at line 8, column 53: must be a whole number",
            "rig.lamps[0].pixels[0].from: -1 at line 11, column 53: must be between 0 and 4,095",
            "rig.lamps[0].pixels[1].chain: \"b\" at line 11, column 68: must be the id of a chain of"
                + " this rig",
            "rig.lamps[1].output: \"o\" at line 12, column 29: must be the id of an output of this"
                + " rig",
            "scenes[0].lengthMs: \"long\" (string) at line 16, column 29: must be a number",
            "scenes[0].tracks[0].lamps[1]: \"n\" at line 17, column 23: must be the id of a lamp of"
                + " this rig",
            "scenes[0].tracks[0].cues[0].lengthMs: 0 at line 18, column 22: must be between 1 and 86,400,000",
            "scenes[0].tracks[0].cues[0].pattern.onMs: -1 at line 18, column 62: must be between 0 and"
                + " 86,400,000",
            "scenes[0].tracks[0].cues[0].pattern.level: 2 at line 18, column 75: must be between 0 and 1");
  }

  @Test
  void brokenLampIsNotReportedMissingToo() {
    ReadResult read =
        read(
            """
            {"lampwright": 1, "rig": {"outputs": [{"id": "o"}], "lamps": [
              {"id": "l", "output": "o", "function": 5}]},
             "scenes": [{"id": "s", "lengthMs": 1000, "tracks": [{"lamps": ["l"]}]}]}
            """);

    assertThat(read.problems()).singleElement().extracting(p -> p.position().line()).isEqualTo(2);
  }

  @Test
  void badIdOfALampIsOneProblemHoweverTracksWriteIt() {
    ReadResult read =
        read(
            """
            {"lampwright": 1, "rig": {"outputs": [{"id": "o"}], "lamps": [
              {"id": "Roof lamp", "output": "o"}]},
             "scenes": [{"id": "s", "lengthMs": 1000, "tracks": [{"lamps": ["Roof lamp"]},
              {"lamps": ["roof-lamp"]}, {"lamps": ["Roof lamp"]}, {"lamps": ["bonnet"]}]}]}
            """);

    assertThat(texts(read))
        .containsExactly(
            "rig.lamps[0].id: \"Roof lamp\" at line 2, column 10: must have 1 to 40 lower-case"
                + " letters, digits or hyphens",
            "scenes[0].tracks[3].lamps[0]: \"bonnet\" at line 4, column 66: must be the id of a"
                + " lamp of this rig");
  }

  @Test
  void lampsThatNameABrokenChainAreNotReportedToo() {
    ReadResult read =
        read(
            """
            {"lampwright": 1, "rig": {"chains": [{"id": "a", "pixelType": "ws2812b"}], "lamps": [
              {"id": "l", "pixels": [{"chain": "a", "from": 4000}]}]}}
            """);

    assertThat(texts(read))
        .containsExactly(
            "rig.chains[0].pixels: missing at line 1, column 38: must be a whole number");
  }

  @Test
  void listsKeepTheirIndicesBehindABrokenMember() {
    ReadResult read =
        read(
            """
            {"lampwright": 1, "rig": {"outputs": [7, {"id": "o"}], "lamps": [
              null, {"id": "l", "output": "o"}, {"id": "m", "output": "o"}]}}
            """);

    assertThat(read.problems().stream().map(Problem::path))
        .containsExactly("rig.outputs[0]", "rig.lamps[0]", "rig.lamps[2].output");
  }

  @Test
  void theFirst100ProblemsAreListedAndTheRestCounted() {
    String scenes =
        IntStream.range(0, 130)
            .mapToObj(i -> "{\"id\": \"s" + i + "\"}")
            .collect(Collectors.joining(",\n"));

    ReadResult read = read(RIG + scenes + "]}");

    assertThat(read.problems()).hasSize(100);
    assertThat(read.problems().get(99).path()).isEqualTo("scenes[99].lengthMs");
    assertThat(read.unlisted()).isEqualTo(30);
    assertThat(read.lines()).hasSize(101).last().isEqualTo("p: and 30 more problems");
  }

  @Test
  void minimalFileHasTheDefaultsOfTheFormat() {
    ReadResult read =
        read(RIG + "{\"id\": \"s\", \"lengthMs\": 1000, \"tracks\": [{\"lamps\": [\"l\"]}]}]}");

    Project project = read.project().orElseThrow();
    Scene scene = project.scenes().get(0);
    assertThat(project.name()).isEmpty();
    assertThat(project.rig().supplyLimitMilliamps()).isEqualTo(2000);
    assertThat(project.rig().brightnessCap()).isEqualTo(1);
    assertThat(scene.framesPerSecond()).isEqualByComparingTo("50");
    assertThat(scene.loop()).isTrue();
    assertThat(scene.tracks().get(0).cues()).isEmpty();
  }

  @Test
  void formattedFileIsWrittenAsItWas() throws IOException {
    String text = ReadRejectionTest.resource("formatted.lampwright.json");

    Project project = ProjectReader.read("p", text.getBytes(UTF_8)).project().orElseThrow();

    assertThat(ProjectWriter.write(project)).isEqualTo(text);
  }

  @Test
  void toleranceBesideRangesAloneIsForNoneOfThem() {
    String line =
        "{\"t0hNs\": [220, 380], \"t0lNs\": [580, 1000], \"t1hNs\": [580, 1000],"
            + " \"t1lNs\": [220, 420], \"toleranceNs\": 150}";

    assertThat(line(line).project()).isEqualTo(line(line.replace("150", "80")).project());
    assertThat(line(line).project()).isPresent();
    assertThat(texts(line(line.replace("150", "-1"))))
        .containsExactly(
            "pixelTypes[0].line.toleranceNs: -1 at line 5, column 103: must be between 0 and 1,000,000");
  }

  private static ReadResult line(String line) {
    return read(
        """
        {"lampwright": 1, "rig": {"outputs": [{"id": "o"}]}, "pixelTypes": [{"id": "t",
         "order": "RGB", "emitters": {"r": {"x": 0.7, "y": 0.29, "mcd": 405},
         "g": {"x": 0.17, "y": 0.7, "mcd": 690}, "b": {"x": 0.13, "y": 0.05, "mcd": 190}},
         "line":
        %s}]}
        """
            .formatted(line));
  }
}
