package lampwright.exporters.target;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.stream.Stream;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.FirmwareJobs;
import lampwright.exporters.firmware.SimulatedFirmware;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What is said of memory against what avr-gcc makes and the simulator uses. */
class FirmwareSizeTest {
  @TempDir static Path folder;
  private static SimulatedFirmware firmware;

  @BeforeAll
  static void buildProver() {
    firmware = new SimulatedFirmware(folder);
  }

  static Stream<Arguments> rigs() {
    FirmwareJobs eight = FirmwareJobs.on("atmega328p").rate("40");
    for (String type :
        new String[] {
          "ws2812b", "sk6812-rgbw", "ws2813", "ws2815", "ws2811", "ws2812b", "ws2812b", "ws2815"
        }) {
      eight.chain(type, 1);
    }
    return Stream.of(
        Arguments.of("a chain", FirmwareJobs.on("atmega328p").chain("ws2812b", 8)),
        Arguments.of("eight chains", eight),
        Arguments.of("outputs", FirmwareJobs.on("atmega328p").output().output().output().output()),
        Arguments.of("long frame", FirmwareJobs.on("atmega328p").chain("ws2812b", 300).frames(3)),
        Arguments.of("32u4", FirmwareJobs.on("atmega32u4").chain("ws2812b", 8).output()),
        Arguments.of(
            "32u4, two ports",
            FirmwareJobs.on("atmega32u4", 8).chain("ws2812b", 8, "PB4").chain("ws2815", 8, "PC7")),
        Arguments.of("tiny", FirmwareJobs.on("attiny85").chain("ws2812b", 40).output()),
        Arguments.of("tiny, full", FirmwareJobs.on("attiny85").chain("ws2812b", 120).frames(3)));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("rigs")
  void firmwareTakesNoMoreThanIsSaid(String name, FirmwareJobs jobs) throws Exception {
    ProjectJob job = jobs.job();
    Rig rig = job.project().rig();
    FirmwareSize size = Target.of(rig).size(rig);
    SimulatedFirmware.Report report = firmware.prove(job);
    assertThat(report.json()).contains("\"passed\":true");
    int code = figure(report, "flash") - figure(report, "dataInFlash");
    assertThat(code).isBetween((int) (0.9 * size.programBytes()), size.programBytes());
    int ram = figure(report, "ram") + figure(report, "deepestStack");
    // What is left is for an interrupt routine of the builder's.
    assertThat(ram).isBetween(size.ramBytes() - 60, size.ramBytes() - 30);
  }

  private static int figure(SimulatedFirmware.Report report, String name) {
    return Integer.parseInt(report.figure(name));
  }
}
