package lampwright.engine.project;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.light.Fault;

/**
 * What a project may hold, but hardly on purpose.
 *
 * @param place the scene or cue concerned
 * @param fault the field, what it holds and what is odd about it
 */
public record SceneCaution(ScenePlace place, Fault fault) {
  /** Every caution on a project, in the order of the file. */
  public static List<SceneCaution> of(Project project) {
    List<SceneCaution> found = new ArrayList<>();
    Cautions.find(project.scenes(), found::add);
    return found;
  }
}
