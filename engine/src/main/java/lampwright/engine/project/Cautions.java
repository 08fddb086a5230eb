package lampwright.engine.project;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.Consumer;
import lampwright.engine.light.Fault;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** What a project may hold, but hardly on purpose. */
final class Cautions {
  private Cautions() {}

  /** Hands over each, with its path below the project. */
  static void find(List<Scene> scenes, Consumer<SceneCaution> found) {
    for (int s = 0; s < scenes.size(); s++) {
      Scene scene = scenes.get(s);
      ScenePlace place = ScenePlace.ofScene(s);
      if (!scene.wholeFrames()) {
        found.accept(
            caution(
                place,
                ".lengthMs",
                scene.lengthMs().toPlainString(),
                "is no whole number of frames at "
                    + scene.framesPerSecond().toPlainString()
                    + " frames/s; the scene has "
                    + scene.frameCount()));
      }
      for (int t = 0; t < scene.tracks().size(); t++) {
        track(s, t, scene.tracks().get(t), scene.lengthMs(), found);
      }
    }
  }

  private static void track(
      int scene, int trackIndex, Track track, BigDecimal end, Consumer<SceneCaution> found) {
    for (int c = 0; c < track.cues().size(); c++) {
      Cue cue = track.cues().get(c);
      ScenePlace place = ScenePlace.ofCue(scene, trackIndex, c);
      if (cue.startMs().compareTo(end) >= 0) {
        found.accept(
            caution(
                place,
                ".startMs",
                cue.startMs().toPlainString(),
                "is not before the scene's end at "
                    + end.toPlainString()
                    + " ms; the cue is never seen"));
      } else if (cue.endMs().compareTo(end) > 0) {
        found.accept(
            caution(
                place,
                ".lengthMs",
                cue.lengthMs().toPlainString(),
                "runs past the scene's end at "
                    + end.toPlainString()
                    + " ms; the cue is cut there"));
      }
      BigDecimal fades = cue.fadeInMs().add(cue.fadeOutMs());
      if (fades.compareTo(cue.lengthMs()) > 0) {
        found.accept(
            caution(
                place,
                "",
                "fades of " + fades.toPlainString() + " ms",
                "are longer than the cue's "
                    + cue.lengthMs().toPlainString()
                    + " ms; it never shows in full"));
      }
    }
  }

  private static SceneCaution caution(ScenePlace place, String field, String value, String oddity) {
    return new SceneCaution(place, new Fault(place.path() + field, value, oddity));
  }
}
