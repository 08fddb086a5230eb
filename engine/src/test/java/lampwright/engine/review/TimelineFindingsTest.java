package lampwright.engine.review;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;
import org.junit.jupiter.api.Test;

class TimelineFindingsTest {
  private static final String RIG =
      """
      {"lampwright": 1, "rig": {"outputs": [{"id": "o"}],
        "lamps": [{"id": "l", "name": "Stern", "output": "o"}]}, "scenes": [
      """;

  private static List<String> lines(String scene) {
    ReadResult read = ProjectReader.read("p", (RIG + scene + "]}").getBytes(UTF_8));
    List<Finding> found = new Review(List.of()).ofProject(read.project().orElseThrow());
    return Review.located(found, read.positions()).stream()
        .map(f -> f.severity().key() + ": " + f.place().orElseThrow().words() + ": " + f.text())
        .toList();
  }

  private static List<String> cue(String fields) {
    return lines(
        "{\"id\": \"s\", \"lengthMs\": 1000, \"tracks\": [{\"lamps\": [\"l\"],\n\"cues\": [{"
            + fields
            + ", \"pattern\": {\"kind\": \"steady\"}}]}]}");
  }

  @Test
  void lengthOfNoWholeFramesIsACaution() {
    assertThat(lines("{\"id\": \"s\", \"lengthMs\": 1010, \"framesPerSecond\": 30}"))
        .containsExactly(
            "caution: scenes[0].lengthMs at line 3, column 25: scene s: its duration of 1010 ms is"
                + " not a whole number of frames at 30 frames/s; the scene has 30 frames: use a length that is a"
                + " whole number of frames [partial-frame]");
  }

  @Test
  void cueToTheVeryEndIsFine() {
    assertThat(cue("\"startMs\": 500, \"lengthMs\": 500")).isEmpty();
  }

  @Test
  void cuePastTheEndIsACaution() {
    assertThat(cue("\"startMs\": 500, \"lengthMs\": 501"))
        .containsExactly(
            "caution: scenes[0].tracks[0].cues[0].lengthMs at line 4, column 39: cue 1 of Stern,"
                + " scene s: ends at 1001 ms and is cut at the end of the scene; the scene ends at"
                + " 1000 ms: shorten the cue or lengthen the scene [cue-cut]");
  }

  @Test
  void cueThatStartsAtTheEndIsACaution() {
    assertThat(cue("\"startMs\": 1000, \"lengthMs\": 501"))
        .containsExactly(
            "caution: scenes[0].tracks[0].cues[0].startMs at line 4, column 22: cue 1 of Stern,"
                + " scene s: starts at 1000 ms, after the end of the scene; the scene ends at"
                + " 1000 ms: move the cue or lengthen the scene [cue-never-seen]");
  }

  @Test
  void fadesLongerThanTheCueAreACaution() {
    assertThat(cue("\"lengthMs\": 500, \"fadeInMs\": 250, \"fadeOutMs\": 250")).isEmpty();
    assertThat(cue("\"lengthMs\": 500, \"fadeInMs\": 250, \"fadeOutMs\": 250.5"))
        .containsExactly(
            "caution: scenes[0].tracks[0].cues[0] at line 4, column 10: cue 1 of Stern, scene s:"
                + " fades of 500.5 ms are longer than the cue, which never shows in full; the cue"
                + " lasts 500 ms: shorten the fades [fades-too-long]");
  }
}
