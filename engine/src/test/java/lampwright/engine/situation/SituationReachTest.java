package lampwright.engine.situation;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;
import lampwright.engine.situation.SituationReach.Unseen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What can't be seen, by the rules of docs/situations.md worked through by hand: valid pulses have
 * 800 to 2,200 us, a centre that is learnt moves a width by up to 100, and a condition that is on
 * stays on by its hysteresis.
 */
class SituationReachTest {
  private static final String PROJECT =
      """
      {"lampwright": 1, "rig": {"outputs": [{"id": "o"}, {"id": "p"}],
       "lamps": [{"id": "l", "output": "o"}, {"id": "m", "output": "p"}],
       "inputs": [{"id": "t", "kind": "servo-pulse"},
        {"id": "v", "kind": "servo-pulse", "centre": "power-up"},
        {"id": "x", "kind": "switch"}, {"id": "y", "kind": "switch"}]},
       "scenes": [{"id": "l", "lengthMs": 100, "tracks": [{"lamps": ["l"]}]},
        {"id": "m", "lengthMs": 100, "tracks": [{"lamps": ["m"]}]},
        {"id": "both", "lengthMs": 100, "tracks": [{"lamps": ["l"]}, {"lamps": ["m", "l"]}]},
        {"id": "none", "lengthMs": 100}],
       "situations": [%s]}
      """;

  private static final String ALWAYS = "{\"id\": \"always\"}, ";
  private static final String LOST =
      "{\"id\": \"lost\", \"all\": [{\"input\": \"t\", \"lost\": true}]}, ";
  private static final String NEVER =
      "{\"id\": \"never\", \"all\": [{\"input\": \"x\", \"lost\": true}]}, ";

  private static List<Optional<Unseen>> of(String situations) {
    ReadResult read = ProjectReader.read("p", PROJECT.formatted(situations).getBytes(UTF_8));
    assertThat(read.problems()).isEmpty();
    Project project = read.project().orElseThrow();
    return SituationReach.of(project.rig(), project.scenes(), project.situations());
  }

  private static Optional<Unseen> last(String situations) {
    List<Optional<Unseen>> all = of(situations);
    return all.get(all.size() - 1);
  }

  private static void assertPossible(boolean possible, String situation) {
    assertThat(last(ALWAYS + LOST + NEVER + "{\"id\": \"s\", " + situation + "}"))
        .isEqualTo(possible ? Optional.empty() : Optional.of(Unseen.IMPOSSIBLE));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{'input': 't', 'aboveUs': 2199}|true",
        "{'input': 't', 'aboveUs': 2200}|false",
        "{'input': 't', 'belowUs': 801}|true",
        "{'input': 't', 'belowUs': 800}|false",
        "{'input': 't', 'betweenUs': [2200, 2300]}|true",
        "{'input': 't', 'betweenUs': [2201, 2300]}|false",
        "{'input': 't', 'betweenUs': [700, 800]}|true",
        "{'input': 't', 'betweenUs': [700, 799]}|false",
        "{'input': 'v', 'aboveUs': 2299}|true",
        "{'input': 'v', 'aboveUs': 2300}|false",
        "{'input': 'v', 'belowUs': 701}|true",
        "{'input': 'v', 'belowUs': 700}|false",
        // However far it stays on, it has to go on first.
        "{'input': 't', 'aboveUs': 2200, 'hysteresisUs': 500}|false",
        "{'input': 'x', 'lost': true}|false",
        "{'input': 't', 'lost': true}|true",
        "{'situation': 'always', 'is': 'active'}|true",
        "{'situation': 'always', 'is': 'inactive'}|false",
        "{'situation': 'lost', 'is': 'active'}|true",
        "{'situation': 'lost', 'is': 'inactive'}|true",
        "{'situation': 'never', 'is': 'active'}|false",
        "{'situation': 'never', 'is': 'inactive'}|true",
        "{'situation': 'lost', 'endedWithinMs': 20}|true",
        "{'situation': 'lost', 'endedWithinMs': 0}|false",
        "{'situation': 'always', 'endedWithinMs': 20}|false",
        "{'situation': 'never', 'endedWithinMs': 20}|false",
      })
  void conditionIsPossibleOrNot(String condition, boolean possible) {
    String json = condition.replace('\'', '"');
    assertPossible(possible, "\"all\": [" + json + "]");
    assertPossible(possible, "\"any\": [" + json + "]");
    // With another that can hold, all of them can't, but one of them can.
    String other = json + ", {\"input\": \"y\", \"is\": \"on\"}";
    assertPossible(possible, "\"all\": [" + other + "]");
    assertPossible(true, "\"any\": [" + other + "]");
  }

  /** Two conditions of one situation; the hysteresis is 20 us unless it is given. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // On down to 1,580, on up to 1,560 or 1,580.
        "{'input': 't', 'aboveUs': 1600}|{'input': 't', 'belowUs': 1560}|true",
        "{'input': 't', 'aboveUs': 1600}|{'input': 't', 'belowUs': 1559}|false",
        "{'input': 't', 'aboveUs': 1600, 'hysteresisUs': 0}|{'input': 't', 'belowUs': 1600, 'hysteresisUs': 0}|true",
        "{'input': 't', 'aboveUs': 1600, 'hysteresisUs': 0}|{'input': 't', 'belowUs': 1599, 'hysteresisUs': 0}|false",
        "{'input': 't', 'aboveUs': 1600}|{'input': 't', 'aboveUs': 1900}|true",
        "{'input': 't', 'belowUs': 1600}|{'input': 't', 'belowUs': 900}|true",
        "{'input': 't', 'betweenUs': [1400, 1500]}|{'input': 't', 'betweenUs': [1540, 1600]}|true",
        "{'input': 't', 'betweenUs': [1400, 1500]}|{'input': 't', 'betweenUs': [1541, 1600]}|false",
        "{'input': 't', 'betweenUs': [1400, 1500]}|{'input': 't', 'aboveUs': 1540}|true",
        "{'input': 't', 'betweenUs': [1400, 1500]}|{'input': 't', 'aboveUs': 1541}|false",
        "{'input': 't', 'betweenUs': [1400, 1500]}|{'input': 't', 'belowUs': 1360}|true",
        "{'input': 't', 'betweenUs': [1400, 1500]}|{'input': 't', 'belowUs': 1359}|false",
        "{'input': 't', 'aboveUs': 1600}|{'input': 'v', 'belowUs': 1400}|true",
        "{'input': 't', 'aboveUs': 1600}|{'input': 't', 'lost': true}|false",
        "{'input': 't', 'aboveUs': 1600}|{'input': 'v', 'lost': true}|true",
        "{'input': 'x', 'is': 'on'}|{'input': 'x', 'is': 'off'}|false",
        "{'input': 'x', 'is': 'on'}|{'input': 'x', 'is': 'on'}|true",
        "{'input': 'x', 'is': 'off'}|{'input': 'x', 'is': 'off'}|true",
        "{'input': 'x', 'is': 'on'}|{'input': 'y', 'is': 'off'}|true",
        "{'situation': 'lost', 'is': 'active'}|{'situation': 'lost', 'is': 'inactive'}|false",
        "{'situation': 'lost', 'is': 'inactive'}|{'situation': 'lost', 'is': 'inactive'}|true",
        "{'situation': 'lost', 'is': 'active'}|{'situation': 'lost', 'endedWithinMs': 20}|false",
        "{'situation': 'lost', 'is': 'inactive'}|{'situation': 'lost', 'endedWithinMs': 20}|true",
        "{'situation': 'lost', 'is': 'active'}|{'situation': 'always', 'is': 'active'}|true",
        // Taps are on after the input has gone off again.
        "{'input': 'x', 'is': 'on', 'taps': 1}|{'input': 'x', 'is': 'off'}|true",
      })
  void conditionsMeetOrNot(String one, String other, boolean possible) {
    String a = one.replace('\'', '"');
    String b = other.replace('\'', '"');
    assertPossible(possible, "\"all\": [" + a + ", " + b + "]");
    assertPossible(possible, "\"all\": [" + b + ", " + a + "]");
    assertPossible(true, "\"any\": [" + a + ", " + b + "]");
  }

  @Test
  void delayAfterTapsCannotPassUnlessAnotherConditionHolds() {
    String taps = "{\"input\": \"x\", \"is\": \"on\", \"taps\": 1}";
    assertPossible(false, "\"afterMs\": 1, \"all\": [" + taps + "]");
    assertPossible(true, "\"afterMs\": 0, \"all\": [" + taps + "]");
    String on = "{\"input\": \"x\", \"is\": \"on\"}";
    assertPossible(true, "\"afterMs\": 1, \"all\": [" + on + "]");
    assertPossible(true, "\"afterMs\": 1, \"any\": [" + taps + ", " + on + "]");
  }

  @Test
  void sceneWithoutATrackIsNotSeen() {
    assertThat(of("{\"id\": \"a\", \"scene\": \"none\"}, {\"id\": \"b\", \"scene\": \"l\"}"))
        .containsExactly(Optional.of(Unseen.NO_TRACK), Optional.empty());
  }

  private static final String X = "{\"input\": \"x\", \"is\": \"on\"}";
  private static final String XY = X + ", {\"input\": \"y\", \"is\": \"on\"}";

  private static boolean covered(String high, String low) {
    String both = "{\"id\": \"high\", %s}, {\"id\": \"low\", %s}".formatted(high, low);
    return last(both.replace('\'', '"')).equals(Optional.of(Unseen.COVERED));
  }

  private static String above(int priority, String scene, String more) {
    return "'priority': " + priority + ", 'scene': '" + scene + "'" + more;
  }

  @Test
  void thoseOfHigherPriorityCoverWhatHasTheirLamps() {
    assertThat(covered(above(2, "both", ""), above(1, "l", ""))).isTrue();
    assertThat(covered(above(2, "both", ""), above(1, "both", ""))).isTrue();
    assertThat(covered(above(2, "l", ""), above(1, "both", ""))).isFalse();
    assertThat(covered(above(2, "m", ""), above(1, "l", ""))).isFalse();
    assertThat(covered(above(1, "both", ""), above(1, "m", ""))).isFalse();
    assertThat(covered(above(1, "both", ""), above(2, "m", ""))).isFalse();
    assertThat(covered(above(2, "none", ""), above(1, "l", ""))).isFalse();
    assertThat(covered(above(2, "both", ", 'afterMs': 20"), above(1, "l", ""))).isFalse();
    // Two that have a lamp each.
    String three =
        "{'id': 'a', 'priority': 3, 'scene': 'l'}, {'id': 'b', 'priority': 2, 'scene': 'm'},"
            + " {'id': 'c', 'priority': 1, 'scene': 'both'}";
    assertThat(last(three.replace('\'', '"'))).contains(Unseen.COVERED);
  }

  /** The higher one has the conditions of the first column, the lower one those of the second. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'all': [X]|'all': [X]|true",
        "'all': [X]|'all': [XY]|true",
        "'all': [XY]|'all': [X]|false",
        "'any': [X]|'all': [X]|false",
        "'all': [X]|'any': [X]|false",
        "'all': [X], 'toggle': true|'all': [X]|false",
        "'all': [X]|'all': [X], 'toggle': true|false",
        "'all': [X], 'lingerMs': 40|'all': [X], 'lingerMs': 40|true",
        "'all': [X], 'lingerMs': 60|'all': [X], 'lingerMs': 40|true",
        "'all': [X], 'lingerMs': 40|'all': [X], 'lingerMs': 60|false",
        "'all': [X], 'afterMs': 40|'all': [X], 'afterMs': 40|true",
        "'all': [X], 'afterMs': 40|'all': [X], 'afterMs': 60|true",
        "'all': [X], 'afterMs': 60|'all': [X], 'afterMs': 40|false"
      })
  void whatIsActiveAsSoonAndAsLongCovers(String high, String low, boolean covers) {
    String higher = ", " + high.replace("XY", XY).replace("[X]", "[" + X + "]");
    String lower = ", " + low.replace("XY", XY).replace("[X]", "[" + X + "]");
    assertThat(covered(above(2, "both", higher), above(1, "l", lower))).isEqualTo(covers);
  }
}
