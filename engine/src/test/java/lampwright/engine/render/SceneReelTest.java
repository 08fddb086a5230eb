package lampwright.engine.render;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Show;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Frames of scenes in any order, kept or not, are those of the frame table. */
class SceneReelTest {
  // 100,000 frames of 720 bytes at 50 frames/s are 69 MiB: more than is kept.
  private static final String LARGE =
      """
      {"lampwright": 1, "rig": {
        "chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 240}],
        "lamps": [{"id": "a", "pixels": [{"chain": "c", "count": 120}]},
          {"id": "b", "pixels": [{"chain": "c", "from": 120, "count": 120}]}],
        "inputs": [{"id": "x", "kind": "switch"}, {"id": "y", "kind": "switch"}]},
       "scenes": [{"id": "long", "lengthMs": %d, "loop": true, "tracks": [
         {"lamps": ["a", "b"], "cues": [{"lengthMs": 400, "pattern":
           {"kind": "fade", "fromLevel": 0, "toLevel": 1}}]}]}],
       "situations": [{"id": "always", "scene": "long"},
        {"id": "x", "priority": 1, "scene": "long", "all": [{"input": "x", "is": "on"}]},
        {"id": "y", "priority": 2, "scene": "long", "start": "shared",
         "all": [{"input": "y", "is": "on"}]}]}
      """;

  private static Project project(int lengthMs) {
    return ProjectReader.read("p", LARGE.formatted(lengthMs).getBytes(UTF_8))
        .project()
        .orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({"true, OFF", "false, OFF", "true, TEMPORAL", "false, TEMPORAL"})
  void framesAreThoseOfTheTableInAnyOrder(boolean keep, Dither dither) {
    Project project = project(400);
    Scene scene = Scene.DITHER.with(project.scenes().get(0), dither);
    FrameTable table = FrameTable.of(project.rig(), scene);
    SceneReel reel = new SceneReel(table, keep);
    Random random = new Random(38);
    int at = 0;
    for (int i = 0; i < 200; i++) {
      assertThat(reel.frame(at)).as("frame %d", at).isEqualTo(table.frame(at));
      at = random.nextInt(4) == 0 ? random.nextInt(20) : (at + random.nextInt(3)) % 20;
    }
  }

  @Test
  void showOfAScenePastWhatIsKeptHasItsFrames() {
    Project project = project(2_000_000);
    FrameTable table = FrameTable.of(project.rig(), project.scenes().get(0));
    assertThat(table.bytes()).isGreaterThan(64L << 20);
    Show show = Show.of(project.rig(), project.scenes(), project.situations()).orElseThrow();
    ShowFrames frames = new ShowFrames(show);
    byte[] bytes = new byte[frames.frameBytes()];
    for (int n = 0; n < 40; n++) {
      // Of a switch two samples in a row count: x from frame 4 to 12 and from 21 on, y from 31 on.
      frames.machine().take(0, (n >= 3 && n < 12) || n >= 20 ? 1 : 0);
      frames.machine().take(1, n >= 30 ? 1 : 0);
      frames.next(bytes);
      int shown = n >= 31 ? n : n >= 21 ? n - 21 : n >= 4 && n < 13 ? n - 4 : n;
      assertThat(bytes).as("frame %d", n).isEqualTo(table.frame(shown));
    }
  }
}
