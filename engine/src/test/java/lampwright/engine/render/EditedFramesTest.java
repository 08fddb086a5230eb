package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Steady;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;

/**
 * After an edit the frames are those of the new scene, and only those that it may change are
 * rendered.
 */
class EditedFramesTest {
  private static final int SCENES = 200;

  private final Random random = new Random(20261130);

  private static FrameStore rendered(FrameStore store) {
    store.render(() -> {});
    return store;
  }

  private static List<List<Integer>> frames(FrameStore store) {
    List<List<Integer>> frames = new ArrayList<>();
    store.forEach((index, bytes) -> frames.add(Rendering.unsigned(bytes)));
    return frames;
  }

  /** Against the same scene rendered from its first frame to its last. */
  @Test
  void editedScenesHaveTheirOwnFrames() {
    int takenOver = 0;
    for (long seed = 0; seed < SCENES; seed++) {
      FrameTable first = RandomScenes.table(seed);
      FrameStore store = rendered(new FrameStore(first));
      FrameTable edited = FrameTable.of(first.layout().rig(), edited(first.scene()));
      FrameStore after = rendered(new FrameStore(edited, Optional.of(store)));
      assertThat(frames(after))
          .as("seed %d", seed)
          .isEqualTo(frames(rendered(new FrameStore(edited))));
      takenOver += after.renderedAnew() < edited.frameCount() ? 1 : 0;
    }
    assertThat(takenOver).isGreaterThan(SCENES / 10);
  }

  private Scene edited(Scene scene) {
    List<Track> tracks = new ArrayList<>(scene.tracks());
    int at = random.nextInt(tracks.size());
    Track track = tracks.get(at);
    switch (random.nextInt(6)) {
      case 0 -> tracks.remove(at);
      case 1 -> tracks.add(random.nextInt(tracks.size() + 1), track);
      case 2 -> java.util.Collections.swap(tracks, at, random.nextInt(tracks.size()));
      case 3 -> {
        return Scene.LENGTH_MS.with(scene, BigDecimal.valueOf(100 + random.nextInt(3000)));
      }
      default -> {
        if (!track.cues().isEmpty()) {
          tracks.set(at, Track.CUES.with(track, cues(track.cues())));
        }
      }
    }
    return tracks.isEmpty() ? scene : Scene.TRACKS.with(scene, tracks);
  }

  private List<Cue> cues(List<Cue> before) {
    List<Cue> cues = new ArrayList<>(before);
    int at = random.nextInt(cues.size());
    Cue cue = cues.get(at);
    switch (random.nextInt(4)) {
      case 0 -> cues.remove(at);
      case 1 -> cues.add(random.nextInt(cues.size() + 1), cue);
      case 2 -> cues.set(at, moved(cue, random.nextInt(500), cue.blend()));
      default -> cues.set(at, moved(cue, 0, List.of(Blend.values()).get(random.nextInt(4))));
    }
    return cues;
  }

  private static Cue moved(Cue cue, int byMs, Blend blend) {
    return new Cue(
        cue.startMs().add(BigDecimal.valueOf(byMs)),
        cue.lengthMs(),
        cue.fadeInMs(),
        cue.fadeOutMs(),
        blend,
        cue.pattern());
  }

  /** An hour at 50 frames/s of which a second becomes another one: 50 of its 180,000 frames. */
  @Test
  void editOfACueRendersTheFramesOfThatCue() {
    Rig rig = Rendering.oneOutput(Optional.empty(), 1);
    List<Cue> cues = new ArrayList<>();
    for (int second = 0; second < 3600; second++) {
      cues.add(cue(second, second % 10 / 10.0));
    }
    FrameStore before = rendered(new FrameStore(FrameTable.of(rig, hour(cues))));
    assertThat(before.renderedAnew()).isEqualTo(180_000);
    cues.set(1234, cue(1234, 0.95));
    FrameTable edited = FrameTable.of(rig, hour(cues));
    long start = FrameTable.framesRendered();
    FrameStore after = rendered(new FrameStore(edited, Optional.of(before)));
    assertThat(after.renderedAnew()).isEqualTo(50);
    // Other tests may render beside this one, so there is no exact count to be had here.
    assertThat(FrameTable.framesRendered() - start).isGreaterThanOrEqualTo(50);
    assertThat(after.complete()).isTrue();
  }

  private static Cue cue(int second, double level) {
    Look look = new Look(new Colour.Drive(level, 0, 0, 0), 1);
    return Cue.of(second * 1000L, 1000, new Steady(look));
  }

  private static Scene hour(List<Cue> cues) {
    return Rendering.scene(
        "3600000", "50", true, Track.of(List.of("spot"), cues.toArray(Cue[]::new)));
  }
}
