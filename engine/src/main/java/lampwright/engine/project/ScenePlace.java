package lampwright.engine.project;

import java.util.OptionalInt;

/**
 * A place in the scenes of a project.
 *
 * @param scene index of the scene
 * @param track index of the track in it; none for the scene itself
 * @param cue index of the cue in the track's list; none for the scene itself
 */
public record ScenePlace(int scene, OptionalInt track, OptionalInt cue) {
  static ScenePlace ofScene(int scene) {
    return new ScenePlace(scene, OptionalInt.empty(), OptionalInt.empty());
  }

  static ScenePlace ofCue(int scene, int track, int cue) {
    return new ScenePlace(scene, OptionalInt.of(track), OptionalInt.of(cue));
  }

  /** As project files write it: {@code scenes[0].tracks[2].cues[1]}. */
  public String path() {
    String path = "scenes[" + scene + "]";
    if (track.isPresent()) {
      path += ".tracks[" + track.getAsInt() + "]";
    }
    return cue.isPresent() ? path + ".cues[" + cue.getAsInt() + "]" : path;
  }
}
