package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Firmware from avr-gcc on controllers that libsimavr simulates; edges at exact cycles. The samples
 * are proved in {@link WaveformTest}, which has their signals too.
 */
class ProveTest {
  private static final String PROJECT =
      """
      {"lampwright": 1,
       "rig": {"controller": "CONTROLLER",
         "chains": [{"id": "c", "pixelType": "TYPE", "pixels": 3}],
         "outputs": [{"id": "o"}],
         "lamps": [{"id": "l", "pixels": [{"chain": "c", "count": 3}]},
                   {"id": "p", "output": "o"}]},
       "scenes": [{"id": "s", "lengthMs": 700, "framesPerSecond": 40, "loop": LOOP, "tracks": [
         {"lamps": ["l"], "cues": [{"lengthMs": 700, "pattern":
           {"kind": "chase", "colour": "#FFA000", "stepMs": 50, "tail": 1}}]},
         {"lamps": ["p"], "cues": [{"lengthMs": 700, "pattern": {"kind": "fade"}}]}]}]}
      """;

  @TempDir Path folder;

  @BeforeAll
  static void lookForTools() {
    OutsideTools.onThisMachine().findSimulator();
  }

  @Execution(ExecutionMode.CONCURRENT)
  @ParameterizedTest
  @CsvSource({
    "attiny85, ws2812b, true",
    "attiny85, sk6812-rgbw, false",
    "atmega32u4, sk6812-rgbw, true",
    "atmega328p, ws2812b, false",
    "rp2040, ws2812b, true",
    "rp2040, sk6812-rgbw, false"
  })
  void everyControllerIsProved(String controller, String type, boolean loop) throws IOException {
    Run run = Run.of("prove", project(controller, type, loop));
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains(" proved ");
  }

  @Test
  void controllerWithoutADriverOfOursHasNothingToProve() throws IOException {
    Run run = Run.of("prove", project("other", "ws2812b", true));
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.err()).contains("your own code drives the pins");
  }

  @Test
  void sceneThatDoesNotFitIsRefusedBeforeAnythingIsProved() throws IOException {
    Path project =
        Files.writeString(
            folder.resolve("p.lampwright.json"),
            Files.readString(project("attiny85", "ws2812b", true))
                .replace("\"pixels\": 3}]", "\"pixels\": 200}]"));
    Run run = Run.of("prove", project);
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("ATtiny85");
  }

  private Path project(String controller, String type, boolean loop) throws IOException {
    return Files.writeString(
        folder.resolve("p.lampwright.json"),
        PROJECT
            .replace("CONTROLLER", controller)
            .replace("TYPE", type)
            .replace("LOOP", Boolean.toString(loop)));
  }
}
