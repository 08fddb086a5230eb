package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** The findings of the samples, each worked out by hand from the rule that it stands for. */
class SampleFindingsTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  private static List<String> findings(String sample) throws IOException {
    Path file = Path.of("..", "samples", sample + ".lampwright.json");
    List<String> words = new ArrayList<>();
    for (JsonNode finding : JSON.readTree(Run.of("check", file, "--json").out()).get("findings")) {
      String where = finding.has("scene") ? ", " + finding.get("scene").asString() : "";
      words.add(
          "%s %s: %s%s"
              .formatted(
                  finding.get("severity").asString(),
                  finding.get("code").asString(),
                  finding.get("subject").asString(),
                  where));
    }
    return words;
  }

  @Test
  void benchAndHarbourHaveNone() throws IOException {
    assertThat(findings("bench-rgbw")).isEmpty();
    assertThat(findings("harbour-dusk")).isEmpty();
  }

  /**
   * Call-out: a group of two flashes every 2 x (60 + 60) + 260 = 500 ms is 4 flashes a second; the
   * other side, half a period later, makes it 8, and what is left between them is the red of the
   * fog lamp. Standing by: the head of the chase comes back to a lamp's pixels every 14 x 160 ms
   * and passes each twice, far below R65's 2 Hz. Indicators, 1.5 a second, come to the 8 of
   * call-out. Blue is reserved. Dithering steps are notes.
   */
  @Test
  void mountainRescueFlashesFast() throws IOException {
    assertThat(findings("mountain-rescue"))
        .containsExactlyInAnyOrder(
            "danger flash-general: lamp Light bar, left, call-out",
            "danger flash-general: lamp Light bar, right, call-out",
            "danger flash-model: whole model, call-out",
            "danger flash-model-red: whole model, call-out",
            "caution flash-rate: lamp Light bar, left, standing-by",
            "caution flash-rate: lamp Light bar, right, standing-by",
            "caution situations-flashes: whole model",
            "note receiver-wiring: controller ATmega328P",
            "note reserved-colour: lamp Light bar, left",
            "note reserved-colour: lamp Light bar, right",
            "note dither-flicker: lamp Light bar, left, call-out",
            "note dither-flicker: lamp Light bar, right, call-out",
            "note dither-flicker: lamp Search lamp, call-out",
            "note dither-flicker: lamp Light bar, left, standing-by",
            "note dither-flicker: lamp Light bar, right, standing-by",
            "note dither-flicker: lamp Stretcher bay, standing-by");
  }

  /**
   * Three pixels under a beam of 150 degrees that goes round 150 times a minute light one after the
   * other: 7.5 a second. The work lamps are tail lights while it is towed. No fuse is stated; two
   * LEDs of 2.1 V leave 0.8 V of 5 V. Timer 1 measures servo pulses, so a third output has timer 0.
   */
  @Test
  void recoveryTractorTurnsFast() throws IOException {
    assertThat(findings("recovery-tractor"))
        .containsExactlyInAnyOrder(
            "danger flash-general: lamp Roof beacon, left, working",
            "danger flash-general: lamp Roof beacon, right, working",
            "note colour-other: lamp Work lamps, front, towed-backwards",
            "note lead-unfused: chain roof",
            "note lead-unfused: chain rear",
            "caution ide-timer: controller ATmega328P",
            "note receiver-wiring: controller ATmega328P",
            "note output-headroom-tight: output step");
  }
}
