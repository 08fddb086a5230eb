package lampwright.exporters.target;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.FirmwareExporter;
import lampwright.exporters.firmware.FirmwareJobs;
import lampwright.exporters.firmware.SimulatedFirmware;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every built-in pixel type on every controller and clock that we drive: the firmware is proved on
 * the simulator, or refused in words.
 */
class EveryPixelTypeTest {
  @TempDir static Path folder;
  private static SimulatedFirmware firmware;

  @BeforeAll
  static void buildProver() {
    firmware = new SimulatedFirmware(folder);
  }

  static Stream<Arguments> cases() {
    return Target.known().stream()
        .filter(AvrTarget.class::isInstance)
        .flatMap(
            target ->
                ((AvrTarget) target)
                    .clocksMegahertz().stream()
                        .flatMap(
                            clock ->
                                BuiltInPixelTypes.all().stream()
                                    .map(
                                        type ->
                                            Arguments.of(
                                                target.controller().id(), clock, type.id()))));
  }

  private static String limits(String type) {
    String[] numbers = PixelLimits.LIMITS.get(type).split(" ", -1);
    StringBuilder words = new StringBuilder();
    for (String time : List.of("t0h", "t0l", "t1h", "t1l", "period")) {
      int at = 2 * List.of("t0h", "t0l", "t1h", "t1l", "period").indexOf(time);
      words.append(time).append("-min=").append(numbers[at]).append(',');
      words.append(time).append("-max=").append(numbers[at + 1]).append(',');
    }
    return words.toString();
  }

  @ParameterizedTest(name = "{0} at {1} MHz, {2}")
  @MethodSource("cases")
  void pixelTypeIsProvedOrRefused(String controller, int clock, String type) throws Exception {
    ProjectJob job = FirmwareJobs.on(controller, clock).chain(type, 2).frames(6).job();
    if (!new FirmwareExporter().facts(job).refusals().isEmpty()) {
      assertThat(new FirmwareExporter().facts(job).refusals())
          .allSatisfy(refusal -> assertThat(refusal.text()).contains(type));
      return;
    }
    firmware.export(job);
    assertProved(
        firmware.run(
            job,
            firmware.compile(job, firmware.main()),
            words -> words.map(word -> word.replaceFirst("t0h-min=.*(?=reset)", limits(type)))));
  }

  /** Parts with other times on one controller, each with a sending routine of its own. */
  @ParameterizedTest(name = "{0} at {1} MHz")
  @MethodSource("clocked")
  void mixedPartsAreProved(String controller, int clock) throws Exception {
    assertProved(
        firmware.prove(
            FirmwareJobs.on(controller, clock)
                .chain("ws2812b", 2)
                .chain("sk6812-rgbw", 1)
                .chain("ws2815", 1)
                .chain("ws2813", 1)
                .frames(6)
                .job()));
  }

  static Stream<Arguments> clocked() {
    return cases()
        .map(of -> List.of(of.get()[0], of.get()[1]))
        .distinct()
        .map(of -> Arguments.of(of.toArray()));
  }

  private static void assertProved(SimulatedFirmware.Report report) {
    assertThat(report.json()).contains("\"passed\":true");
    assertThat(report.figure("framesWrong")).isEqualTo("0");
    assertThat(report.figure("bitsOutsideLimits")).isEqualTo("0");
    assertThat(Integer.parseInt(report.figure("framesCompared"))).isGreaterThan(10);
  }
}
