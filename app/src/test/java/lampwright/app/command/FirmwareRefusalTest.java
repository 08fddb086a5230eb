package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a builder reads when a project does not fit the controller. */
class FirmwareRefusalTest {
  private static final String PROJECT =
      """
      {"lampwright": 1,
       "rig": {"controller": "CONTROLLER",
         "chains": [{"id": "mast", "pixelType": "ws2812b", "pixels": PIXELS, PIN}],
         "lamps": [{"id": "l", "pixels": [{"chain": "mast", "count": PIXELS}]}]},
       "scenes": [{"id": "s", "lengthMs": LENGTH, "framesPerSecond": RATE, "loop": true,
         "tracks": [{"lamps": ["l"], "cues": [{"lengthMs": LENGTH, "pattern":
           {"kind": "flicker", "depth": 1, "rateHz": 50}}]}]}]}
      """;

  @TempDir Path folder;

  /** The packed size is the packer's affair; the figures must agree with one another. */
  @Test
  void sceneTooLargeForTheControllerSaysByHowMuchAndWhatHelps() throws IOException {
    Run run = export("attiny85", 40, 40_000, 50, "PB2");
    Matcher said =
        Pattern.compile(
                "lampwright: firmware: scenes: (\\d+) bytes packed: needs at most 4792 beside the"
                    + " program on the ATtiny85: (\\d+) too many; fewer frames/s or a shorter"
                    + " length, about (\\d+) % of it; fewer scenes \\(--scene\\); or what packs"
                    + " smaller: no dither, less flicker\\R")
            .matcher(lastLine(run));
    assertThat(said.matches()).as(run.err()).isTrue();
    int packed = Integer.parseInt(said.group(1));
    assertThat(Integer.parseInt(said.group(2))).isEqualTo(packed - 4792);
    assertThat(Integer.parseInt(said.group(3))).isEqualTo(100 * 4792 / packed);
  }

  @ParameterizedTest
  @ValueSource(strings = {"export", "prove"})
  void chainTooLongForTheFramePeriodSaysWhichRateItBears(String command) throws IOException {
    Path project = project("atmega328p", 200, 400, 200, "PB2");
    Run run = command.equals("export") ? export(project) : Run.of("prove", project);
    assertRefused(
        run,
        "scene s: 6300 us to send a frame to all chains: needs at most 5000 us, the time of a frame:"
            + " at most 158.7 frames/s, or shorter chains");
  }

  @ParameterizedTest
  @ValueSource(strings = {"export", "prove"})
  void pinThatTheControllerLacksIsRefusedNamingThoseItHas(String command) throws IOException {
    Path project = project("attiny85", 3, 400, 50, "PD6");
    Run run = command.equals("export") ? export(project) : Run.of("prove", project);
    assertRefused(run, "chain mast: PD6: needs a pin of the ATtiny85: PB0, PB1, PB2, PB3, PB4");
  }

  @Test
  void frameTooLargeForTheWorkingMemorySaysByHowMuch() throws IOException {
    assertRefused(
        export("attiny85", 200, 400, 20, "PB2"),
        "controller ATtiny85: 712 bytes of working memory for frame, player and stack: needs at"
            + " most 512: 200 too many; shorter chains or fewer lamps");
  }

  private void assertRefused(Run run, String words) {
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).isEqualToNormalizingNewlines("lampwright: firmware: " + words + "\n");
    assertThat(folder.resolve("firmware")).doesNotExist();
  }

  private static String lastLine(Run run) {
    String[] lines = run.err().split("\\R|\\r", -1);
    return lines[lines.length - 2].strip() + "\n";
  }

  private Run export(String controller, int pixels, int length, int rate, String pin)
      throws IOException {
    Run run = export(project(controller, pixels, length, rate, pin));
    assertThat(run.code()).isEqualTo(3);
    return run;
  }

  private Run export(Path project) {
    return Run.of("export", project, "--to", folder, "--as", "firmware");
  }

  private Path project(String controller, int pixels, int length, int rate, String pin)
      throws IOException {
    return Files.writeString(
        folder.resolve("p.lampwright.json"),
        PROJECT
            .replace("CONTROLLER", controller)
            .replace("PIXELS", Integer.toString(pixels))
            .replace("LENGTH", Integer.toString(length))
            .replace("RATE", Integer.toString(rate))
            .replace("PIN", "\"pin\": \"" + pin + "\""));
  }
}
