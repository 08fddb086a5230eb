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

  @Test
  void sceneTooLargeForTheControllerSaysByHowMuchAndWhatHelps() throws IOException {
    Run run = export(project("attiny85", 40, 40_000, 50, "PB2"));
    assertRefused(run, "ATtiny85", "8192 bytes", "fewer scenes");
    // What is left beside player and driver, as a share of what the scenes need.
    double packed = figure(run, "the scenes need ([0-9]+) bytes packed");
    double player = figure(run, "player and driver ([0-9]+) bytes");
    assertThat(figure(run, "about ([0-9]+) % of them"))
        .isEqualTo(Math.floor(100 * (8192 - player) / packed));
  }

  @ParameterizedTest
  @ValueSource(strings = {"export", "prove"})
  void chainTooLongForTheFramePeriodSaysWhichRateItBears(String command) throws IOException {
    Path project = project("atmega328p", 200, 400, 200, "PB2");
    // 200 pixels of 24 bits in 21 cycles of 16 MHz are 6.30 ms, and 0.30 ms of reset: 151.5 a
    // second
    // at most, less what calls and returns take. A frame lasts 5 ms.
    Run run = run(command, project);
    assertRefused(run, "5.00 ms", "frames/s");
    double rate = figure(run, "play at ([0-9.]+) frames/s or less");
    assertThat(rate).isBetween(150.5, 151.5);
    assertThat(figure(run, "sending a frame takes ([0-9.]+) ms")).isBetween(6.60, 6.65);
    // (5 ms - 0.3 ms) / 31.5 us a pixel.
    assertThat(figure(run, "to ([0-9]+) pixels in all")).isBetween(147.0, 149.0);
  }

  @ParameterizedTest
  @ValueSource(strings = {"export", "prove"})
  void pinThatTheControllerLacksIsRefusedNamingThoseItHas(String command) throws IOException {
    Path project = project("attiny85", 3, 400, 50, "PD6");
    assertRefused(run(command, project), "mast", "PD6", "ATtiny85", "PB0, PB1, PB2, PB3, PB4");
  }

  @Test
  void frameTooLargeForTheWorkingMemorySaysByHowMuch() throws IOException {
    Run run = export(project("attiny85", 200, 400, 20, "PB2"));
    assertRefused(run, "ATtiny85", "working memory", "512 bytes", "too many");
    // 200 pixels of 3 bytes; the player and its stack come on top.
    double needed = figure(run, "need ([0-9]+) bytes of working memory");
    assertThat(needed).isBetween(640.0, 800.0);
    assertThat(figure(run, ": ([0-9]+) bytes too many")).isEqualTo(needed - 512);
  }

  private static double figure(Run run, String pattern) {
    Matcher found = Pattern.compile(pattern).matcher(run.err());
    assertThat(found.find()).as(pattern + " in " + run.err()).isTrue();
    return Double.parseDouble(found.group(1));
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
