package lampwright.app.command;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Scene;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** The scenes that a command works on. */
final class SceneChoice {
  @Spec(Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--scene",
      paramLabel = "ID",
      description = "a scene; may be given again. Without it: every scene")
  private List<String> ids = new ArrayList<>();

  /**
   * The scenes chosen, each once.
   *
   * @throws ParameterException if the project has no such scene
   */
  List<Scene> of(Project project) {
    if (ids.isEmpty()) {
      return project.scenes();
    }
    List<Scene> scenes = new ArrayList<>();
    for (String id : new LinkedHashSet<>(ids)) {
      scenes.add(project.scene(id).orElseThrow(() -> unknown(id, project)));
    }
    return scenes;
  }

  private ParameterException unknown(String id, Project project) {
    String known = String.join(", ", project.scenes().stream().map(Scene::id).toList());
    return new ParameterException(
        spec.commandLine(), "--scene: " + id + ": must be a scene of the project: " + known);
  }
}
