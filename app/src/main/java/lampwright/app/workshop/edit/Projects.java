package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import lampwright.engine.document.Project;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.engine.situation.Situation;

/** Small steps from one project to the next. */
public final class Projects {
  private static final String FIRST_PIXELS = "ws2812b";
  private static final int FIRST_PIXEL_COUNT = 8;
  private static final long FIRST_SCENE_MS = 4000;

  private Projects() {}

  /** What a new project begins with: one chain, no lamps, an empty scene. */
  public static Project fresh() {
    Chain chain =
        new Chain("chain-1", BuiltInPixelTypes.find(FIRST_PIXELS).orElseThrow(), FIRST_PIXEL_COUNT);
    return Project.of(
        "", Rig.of(List.of(chain), List.of(), List.of()), emptyScene("scene-1", FIRST_SCENE_MS));
  }

  /** A scene of this length in which nothing happens. */
  public static Scene emptyScene(String id, long lengthMs) {
    return Scene.SHAPE
        .draft()
        .set(Scene.ID, id)
        .set(Scene.LENGTH_MS, BigDecimal.valueOf(lengthMs))
        .make();
  }

  /** Changes one scene. */
  public static Project inScene(Project project, String scene, UnaryOperator<Scene> change) {
    return Project.SCENES.with(
        project,
        project.scenes().stream().map(s -> s.id().equals(scene) ? change.apply(s) : s).toList());
  }

  /** Gives a scene another id, and what names it. */
  public static Project withSceneId(Project project, String from, String to) {
    return Project.SHAPE
        .draft(project)
        .set(
            Project.SCENES,
            project.scenes().stream()
                .map(s -> s.id().equals(from) ? Scene.ID.with(s, to) : s)
                .toList())
        .set(
            Project.SITUATIONS,
            project.situations().stream()
                .map(
                    s ->
                        s.scene().equals(Optional.of(from))
                            ? Situation.SCENE.with(s, Optional.of(to))
                            : s)
                .toList())
        .make();
  }

  /** Changes one cue; the others keep their places. */
  public static Project inCue(
      Project project, String scene, CueRef ref, UnaryOperator<Cue> change) {
    return inScene(
        project,
        scene,
        s -> {
          Track track = s.tracks().get(ref.track());
          List<Cue> cues = replaced(track.cues(), ref.cue(), change);
          return Scene.TRACKS.with(
              s, replaced(s.tracks(), ref.track(), t -> Track.CUES.with(t, cues)));
        });
  }

  /** A list with one member changed. */
  public static <T> List<T> replaced(List<T> list, int index, UnaryOperator<T> change) {
    List<T> changed = new ArrayList<>(list);
    changed.set(index, change.apply(changed.get(index)));
    return changed;
  }

  /** The first of {@code stem-1}, {@code stem-2} and so on that is not taken. */
  public static String freeId(String stem, Collection<String> taken) {
    Set<String> known = new HashSet<>(taken);
    int number = 1;
    while (known.contains(stem + "-" + number)) {
      number++;
    }
    return stem + "-" + number;
  }
}
