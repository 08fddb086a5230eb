package lampwright.app.command;

import static lampwright.app.command.Run.sample;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** Explanations: against numbers worked out by hand, exported tables and rehearsed drives. */
class ExplainTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Offset<Double> DIGITS = within(1e-9);

  private static final double LEVEL = 0.793110173512;
  private static final double CODE = 0.219519718075;
  private static final double BEAM = 0.345491502813;
  private static final double FADE = 0.515596289649;

  // At frame 37 of 50 per second, 740 ms: a turn of 400 ms is at 340, so the beam is at 306
  // degrees,
  // 54 from pixel 0, and half a beam is 90: (1 + cos 108) / 2 = 0.3454915028 of the light.
  // Level 0.9 ^ 2.2 = 0.7931101735, code 128/255 ^ 2.2 = 0.2195197181, fade 0.74 ^ 2.2 =
  // 0.5155962896, under it full blue. All from a calculator.
  private static final String PROJECT =
      """
      {"lampwright": 1, "name": "By hand",
       "rig": {"brightnessCap": 0.8, "curve": {"kind": "power", "gamma": 2.2},
         "chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 3}],
         "outputs": [{"id": "o"}],
         "lamps": [{"id": "ring", "name": "Ring", "pixels": [{"chain": "c", "count": 3}]},
                   {"id": "plain", "output": "o"}]},
       "scenes": [{"id": "s", "lengthMs": 4000, "framesPerSecond": 50, "tracks": [
         {"lamps": ["ring"], "cues": [
           {"lengthMs": 4000, "pattern": {"kind": "steady", "colour": "#00FF00"}},
           {"lengthMs": 4000, "pattern": {"kind": "steady", "colour": "#0000FF"}}]},
         {"lamps": ["ring"], "cues": [{"lengthMs": 4000, "fadeInMs": 1000, "pattern":
           {"kind": "rotating-beacon", "colour": "#FF8000", "level": 0.9, "perMinute": 150,
            "beamDegrees": 180}}]}]}]}
      """;

  @TempDir Path folder;

  private Path project() throws IOException {
    return Files.writeString(folder.resolve("p.lampwright.json"), PROJECT);
  }

  private static JsonNode json(Object... words) {
    Run run = Run.of(words);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    return JSON.readTree(run.out());
  }

  private static void assertDrives(JsonNode found, double... expected) {
    assertThat(found.size()).isEqualTo(expected.length);
    for (int i = 0; i < expected.length; i++) {
      assertThat(found.get(i).asDouble()).isCloseTo(expected[i], DIGITS);
    }
  }

  @Test
  void everyStepIsThatOfTheWorkedExample() throws IOException {
    JsonNode why = json("explain", project(), "--frame", 37, "--lamp", "ring", "--json");
    JsonNode beacon = why.path("cues").get(2);
    assertThat(beacon.path("pattern").asString()).isEqualTo("rotating-beacon");
    assertThat(beacon.path("sinceStartMs").asDouble()).isEqualTo(740);
    assertThat(beacon.path("periodMs").asDouble()).isEqualTo(400);
    assertThat(beacon.path("inPeriodMs").asDouble()).isEqualTo(340);
    assertThat(beacon.path("levelLight").asDouble()).isCloseTo(LEVEL, DIGITS);
    // WS2812B sends green first.
    assertDrives(beacon.path("fullColour"), CODE, 1, 0);
    assertThat(beacon.path("faded").asDouble()).isCloseTo(0.74, DIGITS);
    assertThat(beacon.path("a").asDouble()).isCloseTo(FADE, DIGITS);
    assertDrives(beacon.path("painted"), CODE * LEVEL * BEAM, LEVEL * BEAM, 0);
    assertDrives(beacon.path("under"), 0, 0, 1);
    assertDrives(beacon.path("result"), CODE * LEVEL * BEAM * FADE, LEVEL * BEAM * FADE, 1 - FADE);
    assertThat(why.path("cues").get(0).path("hidden").asBoolean()).isTrue();
    assertThat(why.path("cues").get(1).path("hidden").asBoolean()).isFalse();
    // 255 x 0.8 x 0.0310147 = 6.33, x 0.1412800 = 28.82, x 0.4844037 = 98.82.
    assertThat(why.path("bytes").values().stream().map(b -> b.path("sent").asInt()))
        .containsExactly(6, 29, 99);
  }

  @Test
  void textHasTheSameSteps() throws IOException {
    Run run = Run.of("explain", project(), "--at", "0.7599", "--lamp", "ring", "--pixel", 0);
    assertThat(run.out().lines())
        .containsSequence(
            "Lamp Ring (ring), pixel 0 of 3, frame 37 (0.740 s): G 6, R 29, B 99",
            "  Scene s, frame 37 of 200 (0.740 s)",
            "  Track 1, cue 1: Steady, from 0 to 4\u00a0s; 740\u00a0ms after its start",
            "    hidden: a cue above replaces it")
        .contains(
            "    period 400\u00a0ms, at 340\u00a0ms of it",
            "    colour #FF8000 at full light: G 0.2195, R 1, B 0",
            "    level 90\u00a0%, curve power 2.2: light 0.7931",
            "    faded in 74\u00a0%, after the curve 0.5156",
            "    blend replace: G 0 \u2192 0.03101, R 0 \u2192 0.1413, B 1 \u2192 0.4844",
            "  Byte R: drive 0.113 \u00d7 255 = 28.82, rounded 29");
    Run dark = Run.of("explain", project(), "--frame", 0, "--lamp", "plain");
    assertThat(dark.out()).contains("frame 0 (0.000 s): 0\n", "No cue covers this frame: dark");
  }

  @ParameterizedTest
  @CsvSource({"recovery-tractor, working", "mountain-rescue, call-out", "harbour-dusk, dusk"})
  void bytesAreThoseOfTheExport(String name, String scene) throws IOException {
    Path project = sample(name);
    assertThat(
            Run.of("export", project, "--to", folder, "--as", "bin,csv", "--scene", scene).code())
        .isZero();
    byte[] table = Files.readAllBytes(folder.resolve(scene + ".bin"));
    List<String> columns =
        List.of(
            Files.readAllLines(folder.resolve(scene + ".csv")).stream()
                .filter(line -> line.contains("."))
                .findFirst()
                .orElseThrow()
                .split(",", -1));
    JsonNode file = JSON.readTree(Files.readString(project));
    int frames =
        file.path("scenes").values().stream()
            .filter(s -> s.path("id").asString().equals(scene))
            .mapToInt(s -> s.path("lengthMs").asInt() * s.path("framesPerSecond").asInt() / 1000)
            .findFirst()
            .orElseThrow();
    int width = table.length / frames;
    assertThat(columns).hasSizeGreaterThanOrEqualTo(width);
    Random random = new Random(1);
    for (JsonNode lamp : file.path("rig").path("lamps")) {
      int frame = random.nextInt(frames);
      JsonNode why =
          json(
              "explain",
              project,
              "--scene",
              scene,
              "--frame",
              frame,
              "--lamp",
              lamp.path("id").asString(),
              "--json");
      for (JsonNode step : why.path("bytes")) {
        assertThat(step.path("sent").asInt())
            .isEqualTo(table[frame * width + step.path("at").asInt()] & 0xFF);
      }
    }
  }

  @Test
  void situationsOfADriveAreNamedAndBytesAreThoseOfTheRehearsal() throws IOException {
    Path project = sample("recovery-tractor");
    Path drive = Path.of("../samples/recovery-tractor.drive.csv");
    Path rehearsed = folder.resolve("show.bin");
    Run log = Run.of("rehearse", project, "--drive", drive, "--to", rehearsed, "--log");
    assertThat(log.code()).isZero();
    byte[] show = Files.readAllBytes(rehearsed);
    JsonNode lamps = JSON.readTree(Files.readString(project)).path("rig").path("lamps");
    // Chains of 10 RGBW and 8 RGB pixels and three outputs.
    int width = 10 * 4 + 8 * 3 + 3;
    int frames = show.length / width;
    Random random = new Random(2);
    for (int i = 0; i < 30; i++) {
      int frame = random.nextInt(frames);
      String lamp = lamps.get(random.nextInt(lamps.size())).path("id").asString();
      JsonNode why =
          json("explain", project, "--drive", drive, "--frame", frame, "--lamp", lamp, "--json");
      for (JsonNode step : why.path("bytes")) {
        assertThat(step.path("sent").asInt())
            .isEqualTo(show[frame * width + step.path("at").asInt()] & 0xFF);
      }
      if (why.path("bytes").isEmpty()) {
        assertThat(why.has("situation")).isFalse();
      } else {
        String began = "frame " + why.path("beganAtFrame").asInt() + " (";
        String name = ": " + why.path("situation").asString() + " begins";
        assertThat(log.out().lines()).anyMatch(l -> l.startsWith(began) && l.contains(name));
      }
    }
  }

  @Test
  void wrongWordsAreRefused() throws IOException {
    Path file = project();
    assertRefused("between 0 and 199", "explain", file, "--frame", 200, "--lamp", "ring");
    assertRefused("between 0 and 199", "explain", file, "--frame", -1, "--lamp", "ring");
    assertRefused("below 4 s", "explain", file, "--at", "4", "--lamp", "ring");
    assertRefused("below 4 s", "explain", file, "--at", "1e999999999", "--lamp", "ring");
    assertRefused("below 4 s", "explain", file, "--at", "-0.001", "--lamp", "ring");
    // A show is played up to its frame: no hours for a slip of the hand.
    assertRefused(
        "between 0 and 999,999",
        "explain",
        Run.sample("recovery-tractor"),
        "--drive",
        Run.SAMPLES.resolve("recovery-tractor.drive.csv"),
        "--frame",
        99_999_999,
        "--lamp",
        "tail-left");
    assertRefused("'abc' is not a number", "explain", file, "--at", "abc", "--lamp", "ring");
    assertRefused("did you mean \"ring\"", "explain", file, "--frame", 0, "--lamp", "rin");
    assertRefused("between 0 and 2", "explain", file, "--frame", 0, "--lamp", "ring", "--pixel", 3);
    assertRefused("must be 0", "explain", file, "--frame", 0, "--lamp", "plain", "--pixel", 1);
    assertRefused("--frame", "explain", file, "--lamp", "ring");
    assertRefused("exclusive", "explain", file, "--frame", 1, "--at", 1, "--lamp", "ring");
    assertRefused(
        "--scene", "explain", file, "--frame", 1, "--lamp", "ring", "--scene", "s", "--drive", "x");
    assertThat(Run.of("explain", file, "--at", "1e-999999999", "--lamp", "ring").out())
        .contains("frame 0 (");
    Run drive = Run.of("explain", file, "--frame", 0, "--lamp", "ring", "--drive", "none.csv");
    assertThat(drive.code()).isEqualTo(1);
    assertThat(drive.err()).contains("no situation has a scene");
  }

  private static void assertRefused(String message, Object... words) {
    Run run = Run.of(words);
    assertThat(run.code()).as(run.err()).isEqualTo(2);
    assertThat(run.err()).contains(message);
    assertThat(run.out()).isEmpty();
  }
}
