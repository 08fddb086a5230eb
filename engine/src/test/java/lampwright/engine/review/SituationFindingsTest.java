package lampwright.engine.review;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SituationFindingsTest {
  private static final String LOST =
      "{\"id\": \"lost\", \"all\": [{\"input\": \"t\", \"lost\": true}]}";

  private static List<String> findings(String inputs, String situations) {
    String text =
        """
        {"lampwright": 1, "rig": {"outputs": [{"id": "o"}, {"id": "p"}],
         "lamps": [{"id": "l", "output": "o"}, {"id": "m", "output": "p"}], "inputs": [%s]},
         "scenes": [{"id": "one", "lengthMs": 100, "tracks": [{"lamps": ["l"]}]},
          {"id": "both", "lengthMs": 100, "tracks": [{"lamps": ["l"]}, {"lamps": ["m"]}]},
          {"id": "slow", "lengthMs": 100, "framesPerSecond": 25, "tracks": [{"lamps": ["m"]}]},
          {"id": "decimal", "lengthMs": 100, "framesPerSecond": 50.0, "tracks": [{"lamps": ["m"]}]},
          {"id": "none", "lengthMs": 100}],
         "situations": [%s]}
        """
            .formatted(inputs, situations);
    ReadResult read = ProjectReader.read("p", text.getBytes(UTF_8));
    assertThat(read.problems()).isEmpty();
    Project project = read.project().orElseThrow();
    assertThat(new Review(List.of()).ofProject(project)).containsAll(Review.ofSituations(project));
    return Review.ofSituations(project).stream()
        .map(f -> f.severity().key() + ": " + f.place().orElseThrow().path() + ": " + f.text())
        .toList();
  }

  private static final String BOTH = "{\"id\": \"always\", \"scene\": \"both\"}";

  @Test
  void projectWithoutSituationsHasNone() {
    assertThat(findings("", "")).isEmpty();
    assertThat(findings("", BOTH)).isEmpty();
  }

  @Test
  void scenesOfUnlikeRatesAreAnError() {
    assertThat(findings("", BOTH + ", {\"id\": \"b\", \"scene\": \"slow\", \"priority\": 1}"))
        .containsExactly(
            "error: situations[1].scene: situation b: its scene slow has 25 frames/s; all scenes of"
                + " situations must have the same rate; both has 50 frames/s: set the same"
                + " frame rate in both scenes [situation-rate]");
  }

  @Test
  void rateIsANumberHoweverItIsWritten() {
    assertThat(findings("", BOTH + ", {\"id\": \"b\", \"scene\": \"decimal\", \"priority\": 1}"))
        .isEmpty();
  }

  @Test
  void equalPrioritiesWithALampInCommonAreAnError() {
    String low = ", {\"id\": \"b\", \"scene\": \"one\", \"priority\": %d, \"all\": [%s]}";
    String condition = "{\"situation\": \"always\", \"is\": \"inactive\"}";
    assertThat(findings("", BOTH + low.formatted(0, condition)))
        .first()
        .isEqualTo(
            "error: situations[1].priority: situation b: has priority 0, like situation always, and"
                + " both light l; situations with a lamp in common must differ in priority: give the"
                + " more important one a higher priority [situation-priority]");
    assertThat(findings("", BOTH + low.formatted(1, condition)))
        .noneMatch(finding -> finding.startsWith("error"));
    assertThat(
            findings(
                "", "{\"id\": \"a\", \"scene\": \"one\"}, {\"id\": \"b\", \"scene\": \"one\"}"))
        .anyMatch(finding -> finding.contains("both light l"));
    assertThat(
            findings(
                "", "{\"id\": \"a\", \"scene\": \"one\"}, {\"id\": \"b\", \"scene\": \"none\"}"))
        .noneMatch(finding -> finding.startsWith("error"));
  }

  @Test
  void channelThatNobodyWatchesForALossIsACaution() {
    String input = "{\"id\": \"t\", \"kind\": \"servo-pulse\"}";
    assertThat(findings(input, BOTH))
        .containsExactly(
            "caution: rig.inputs[0]: input t: no situation responds to a lost signal; while the"
                + " signal is lost, all its other conditions are off: add a situation with a lost"
                + " condition, such as hazard warning lights [input-without-lost]");
    assertThat(findings(input, BOTH + ", " + LOST)).isEmpty();
    assertThat(findings("{\"id\": \"t\", \"kind\": \"switch\"}", BOTH)).isEmpty();
  }

  @Test
  void lampThatNoSituationLightsIsACaution() {
    assertThat(findings("", "{\"id\": \"a\", \"scene\": \"one\"}"))
        .containsExactly(
            "caution: rig.lamps[1]: lamp m: stays dark: it is in no scene that a situation uses: add"
                + " it to one of these scenes [lamp-in-no-situation]");
  }

  @Test
  void fieldsWithoutEffectAreACaution() {
    assertThat(
            findings(
                "{\"id\": \"t\", \"kind\": \"servo-pulse\", \"activeLow\": true},"
                    + " {\"id\": \"u\", \"kind\": \"switch\", \"lostAfterMs\": 50,"
                    + " \"centre\": \"power-up\"}",
                "{\"id\": \"a\", \"scene\": \"both\", \"toggle\": true, \"lingerMs\": 5}, " + LOST))
        .extracting(text -> text.replaceFirst(";.*", ""))
        .containsExactly(
            "caution: situations[0].lingerMs: situation a: its linger time has no effect",
            "caution: rig.inputs[0].activeLow: input t: active low has no effect",
            "caution: rig.inputs[1].lostAfterMs: input u: its time until the signal is lost has no effect",
            "caution: rig.inputs[1].centre: input u: its centre has no effect");
  }

  @Test
  void situationThatIsAlwaysCoveredIsACaution() {
    String high = "{\"id\": \"high\", \"scene\": \"both\", \"priority\": 5}, ";
    assertThat(findings("", high + "{\"id\": \"low\", \"scene\": \"one\"}"))
        .containsExactly(
            "caution: situations[1]: situation low: never visible: whenever it is active, situations"
                + " of higher priority have all its lamps: raise its priority or change the"
                + " conditions [situation-covered]");
    String half = "{\"id\": \"high\", \"scene\": \"one\", \"priority\": 5}, ";
    assertThat(findings("", half + BOTH)).isEmpty();
  }

  @Test
  void situationThatAnotherImpliesIsCovered() {
    String input = "{\"id\": \"t\", \"kind\": \"switch\"}, {\"id\": \"u\", \"kind\": \"switch\"}";
    String on = "{\"input\": \"t\", \"is\": \"on\"}";
    String more = on + ", {\"input\": \"u\", \"is\": \"on\"}";
    String two =
        "{\"id\": \"a\", \"scene\": \"both\", \"priority\": 5, \"all\": [%s]},"
            + " {\"id\": \"b\", \"scene\": \"both\", \"all\": [%s]%s}";
    assertThat(findings(input, two.formatted(on, more, ""))).hasSize(1);
    assertThat(findings(input, two.formatted(more, on, ""))).isEmpty();
    assertThat(findings(input, two.formatted(on, more, ", \"lingerMs\": 1"))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"input\": \"t\", \"aboveUs\": 2200}",
        "{\"input\": \"t\", \"belowUs\": 800}",
        "{\"input\": \"t\", \"betweenUs\": [2201, 2300]}",
        "{\"input\": \"t\", \"lost\": true}, {\"input\": \"t\", \"aboveUs\": 1500}",
        "{\"input\": \"t\", \"belowUs\": 1400}, {\"input\": \"t\", \"aboveUs\": 1441}",
        "{\"input\": \"u\", \"is\": \"on\"}, {\"input\": \"u\", \"is\": \"off\"}",
        "{\"input\": \"u\", \"lost\": true}",
        "{\"situation\": \"always\", \"is\": \"inactive\"}",
        "{\"situation\": \"always\", \"endedWithinMs\": 500}",
        "{\"situation\": \"lost\", \"endedWithinMs\": 0}",
        "{\"situation\": \"lost\", \"is\": \"active\"}, {\"situation\": \"lost\", \"is\":"
            + " \"inactive\"}"
      })
  void conditionsThatCannotHoldAreACaution(String conditions) {
    assertThat(impossible(conditions))
        .contains(
            "caution: situations[2]: situation a: never becomes active: its conditions can't hold:"
                + " correct the conditions [situation-impossible]");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"input\": \"t\", \"aboveUs\": 2199}",
        "{\"input\": \"t\", \"belowUs\": 801}",
        "{\"input\": \"v\", \"aboveUs\": 2299}",
        "{\"input\": \"t\", \"belowUs\": 1400}, {\"input\": \"t\", \"aboveUs\": 1440}",
        "{\"input\": \"t\", \"belowUs\": 1400}, {\"input\": \"v\", \"aboveUs\": 1500}",
        "{\"input\": \"u\", \"is\": \"on\", \"taps\": 2}, {\"input\": \"u\", \"is\": \"off\"}",
        "{\"situation\": \"lost\", \"is\": \"active\"}, {\"situation\": \"always\", \"is\":"
            + " \"active\"}"
      })
  void conditionsThatCanHoldAreNone(String conditions) {
    assertThat(impossible(conditions)).noneMatch(finding -> finding.contains("never becomes"));
  }

  private static List<String> impossible(String conditions) {
    return findings(
        "{\"id\": \"t\", \"kind\": \"servo-pulse\"}, {\"id\": \"u\", \"kind\": \"switch\"},"
            + " {\"id\": \"v\", \"kind\": \"servo-pulse\", \"centre\": \"power-up\"}",
        BOTH + ", " + LOST + ", {\"id\": \"a\", \"priority\": 5, \"all\": [" + conditions + "]}");
  }

  @Test
  void delayAfterTapsCannotPass() {
    String taps =
        "{\"id\": \"a\", \"afterMs\": %d, \"all\": [{\"input\": \"t\", \"aboveUs\": 1, \"taps\": 2}]}";
    String input = "{\"id\": \"t\", \"kind\": \"servo-pulse\"}";
    assertThat(findings(input, LOST + "," + taps.formatted(1)))
        .anyMatch(finding -> finding.contains("never becomes active"));
    assertThat(findings(input, LOST + "," + taps.formatted(0))).isEmpty();
  }
}
