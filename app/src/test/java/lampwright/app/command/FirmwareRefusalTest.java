package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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

  @Test
  void sceneTooLargeForTheControllerSaysByHowMuchAndWhatHelps() throws IOException {
    assertRefused(
        export(project("attiny85", 40, 40_000, 50, "PB2")),
        "ATtiny85",
        "8192 bytes",
        "fewer scenes");
  }

  @ParameterizedTest
  @ValueSource(strings = {"export", "prove"})
  void chainTooLongForTheFramePeriodSaysWhichRateItBears(String command) throws IOException {
    Path project = project("atmega328p", 200, 400, 200, "PB2");
    // 200 pixels of 24 bits take more than 6 ms on the line; a frame lasts 5 ms.
    assertRefused(run(command, project), "5.00 ms", "frames/s");
  }

  @ParameterizedTest
  @ValueSource(strings = {"export", "prove"})
  void pinThatTheControllerLacksIsRefusedNamingThoseItHas(String command) throws IOException {
    Path project = project("attiny85", 3, 400, 50, "PD6");
    assertRefused(run(command, project), "mast", "PD6", "ATtiny85", "PB0, PB1, PB2, PB3, PB4");
  }

  @Test
  void frameTooLargeForTheWorkingMemorySaysByHowMuch() throws IOException {
    assertRefused(
        export(project("attiny85", 200, 400, 20, "PB2")),
        "ATtiny85",
        "working memory",
        "512 bytes",
        "too many");
  }

  private void assertRefused(Run run, String... words) {
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(words);
    assertThat(folder.resolve("firmware")).doesNotExist();
  }

  private Run run(String command, Path project) {
    return command.equals("export") ? export(project) : Run.of("prove", project);
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
