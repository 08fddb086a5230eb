package lampwright.engine.review;

import java.math.BigDecimal;
import java.util.function.Consumer;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** What is valid in the timeline of a scene, but probably unintended. */
final class TimelineFindings implements Reviewer {
  @Override
  public void project(Project project, Consumer<Finding> found) {
    for (int s = 0; s < project.scenes().size(); s++) {
      Scene scene = project.scenes().get(s);
      wholeFrames(scene, "scenes[" + s + "]", found);
      for (int t = 0; t < scene.tracks().size(); t++) {
        Track track = scene.tracks().get(t);
        for (int c = 0; c < track.cues().size(); c++) {
          cue(project, new CuePlace(s, t, c), found);
        }
      }
    }
  }

  private static void wholeFrames(Scene scene, String path, Consumer<Finding> found) {
    if (scene.wholeFrames()) {
      return;
    }
    found.accept(
        Finding.of(Code.PARTIAL_FRAME, new Subject.OneScene(scene.id()))
            .with("length", Figure.words(scene.lengthMs().toPlainString() + " ms"))
            .with("rate", Figure.words(scene.framesPerSecond().toPlainString() + " frames/s"))
            .with("frames", Figure.count(scene.frameCount(), Unit.FRAMES))
            .at(path + ".lengthMs")
            .in(scene)
            .make());
  }

  private static void cue(Project project, CuePlace place, Consumer<Finding> found) {
    Scene scene = place.scene(project);
    Cue cue = place.cue(project);
    Subject subject = place.subject(project);
    BigDecimal end = scene.lengthMs();
    if (cue.startMs().compareTo(end) >= 0) {
      found.accept(
          Finding.of(Code.CUE_NEVER_SEEN, subject)
              .with("start", milliseconds(cue.startMs()))
              .with("limit", milliseconds(end))
              .at(place.path() + ".startMs")
              .in(scene)
              .make());
    } else if (cue.endMs().compareTo(end) > 0) {
      found.accept(
          Finding.of(Code.CUE_CUT, subject)
              .with("end", milliseconds(cue.endMs()))
              .with("limit", milliseconds(end))
              .at(place.path() + ".lengthMs")
              .in(scene)
              .make());
    }
    BigDecimal fades = cue.fadeInMs().add(cue.fadeOutMs());
    if (fades.compareTo(cue.lengthMs()) > 0) {
      found.accept(
          Finding.of(Code.FADES_TOO_LONG, subject)
              .with("fades", milliseconds(fades))
              .with("limit", milliseconds(cue.lengthMs()))
              .at(place.path())
              .in(scene)
              .make());
    }
  }

  // As written in the file, however many decimals.
  private static Figure milliseconds(BigDecimal ms) {
    return Figure.words(ms.toPlainString() + " ms");
  }
}
