package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.Stream;
import lampwright.exporters.ProjectJob;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The examples on every controller that we drive, as a hobby IDE compiles them, with a core that
 * tells the time by interrupts of timer 0.
 */
class ExamplesTest {
  private static final Path WIRE = Path.of("src/test/wire").toAbsolutePath();

  /** Longest low time between bits, in us: an interrupt of the core's, and the driver's own. */
  private static final String GAP_US = "16";

  @TempDir static Path folder;
  private static SimulatedFirmware firmware;

  @BeforeAll
  static void buildProver() {
    firmware = new SimulatedFirmware(folder);
  }

  @ParameterizedTest
  @CsvSource({
    "atmega328p, 16, PlayScene",
    "atmega328p, 8, OwnLoop",
    "atmega32u4, 16, OwnLoop",
    "attiny85, 8, PlayScene",
    "attiny85, 8, OwnLoop",
    "attiny85, 16, OwnLoop"
  })
  void examplePlaysTheScene(String controller, int clock, String example) throws Exception {
    ProjectJob job = FirmwareJobs.on(controller, clock).chain("ws2812b", 8).job();
    SimulatedFirmware.Report report =
        example.equals("OwnLoop")
            ? run(job, example, "--level", switchPin(controller) + "=1")
            : run(job, example);
    assertThat(report.json()).contains("\"passed\":true");
  }

  @ParameterizedTest
  @ValueSource(strings = {"attiny85", "atmega328p"})
  void closedSwitchMakesTheLightStandStill(String controller) throws Exception {
    ProjectJob job = FirmwareJobs.on(controller).chain("ws2812b", 8).job();
    SimulatedFirmware.Report report = run(job, "OwnLoop", "--level", switchPin(controller) + "=0");
    assertThat(report.passed()).isFalse();
    assertThat(Integer.parseInt(report.figure("framesWrong"))).isGreaterThan(10);
    assertThat(report.figure("bitsOutsideLimits")).isEqualTo("0");
  }

  // The first that no chain is on: those of one chain are PB0, PB4 and PB2.
  private static String switchPin(String controller) {
    return switch (controller) {
      case "atmega328p" -> "D2";
      case "atmega32u4" -> "D1";
      default -> "B3";
    };
  }

  private static SimulatedFirmware.Report run(ProjectJob job, String example, String... more)
      throws Exception {
    firmware.export(job);
    Path elf = firmware.compileExample(job, example, WIRE);
    return withGaps(job, elf, more);
  }

  // The core's interrupts count time, so none of it is leapt over.
  private static SimulatedFirmware.Report withGaps(ProjectJob job, Path elf, String... more)
      throws IOException {
    return firmware.run(
        job,
        elf,
        words ->
            Stream.concat(
                words
                    .filter(word -> !word.equals("--skip-idle"))
                    .map(word -> word.startsWith("pin=") ? word + ",gap=" + GAP_US : word),
                Stream.of(more)));
  }
}
