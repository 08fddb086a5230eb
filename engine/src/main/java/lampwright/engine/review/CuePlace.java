package lampwright.engine.review;

import java.util.List;
import java.util.stream.Collectors;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** A cue by the places of its scene, its track and itself in their lists, from 0. */
record CuePlace(int sceneIndex, int trackIndex, int cueIndex) {
  /** As project files write it: {@code scenes[0].tracks[2].cues[1]}. */
  String path() {
    return "scenes[" + sceneIndex + "].tracks[" + trackIndex + "].cues[" + cueIndex + "]";
  }

  Scene scene(Project project) {
    return project.scenes().get(sceneIndex);
  }

  Track track(Project project) {
    return scene(project).tracks().get(trackIndex);
  }

  Cue cue(Project project) {
    return track(project).cues().get(cueIndex);
  }

  Subject subject(Project project) {
    List<String> ids = track(project).lamps();
    String lamps =
        ids.stream()
            .map(id -> project.rig().lamp(id).map(Lamp::title).orElse(id))
            .collect(Collectors.joining(" + "));
    return new Subject.OneCue(scene(project).id(), trackIndex, cueIndex, lamps);
  }
}
