package lampwright.app.command;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
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
      split = ",",
      description =
          "scene to process; separate several by commas, or repeat the option. Default: all"
              + " scenes")
  private List<String> ids = new ArrayList<>();

  /**
   * The selected scenes, each once.
   *
   * @throws ParameterException if the project has no such scene
   */
  List<Scene> of(Project project) {
    if (ids.isEmpty()) {
      return project.scenes();
    }
    List<Scene> scenes = new ArrayList<>();
    for (String id : new LinkedHashSet<>(ids)) {
      scenes.add(find(id, project, spec));
    }
    return scenes;
  }

  /**
   * The scene of that id.
   *
   * @throws ParameterException if the project has no such scene
   */
  static Scene find(String id, Project project, CommandSpec spec) {
    List<String> known = project.scenes().stream().map(Scene::id).toList();
    return project
        .scene(id)
        .orElseThrow(
            () -> new ParameterException(spec.commandLine(), UnknownWord.of("--scene", id, known)));
  }

  /**
   * The scene that is asked for, or the first of the project; none if there is none, which the
   * terminal reports.
   *
   * @throws ParameterException if the project has no scene of that id
   */
  static Optional<Scene> one(
      Optional<String> id, ProjectFile file, Project project, CommandSpec spec, Terminal terminal) {
    if (id.isPresent()) {
      return Optional.of(find(id.get(), project, spec));
    }
    if (project.scenes().isEmpty()) {
      terminal.refuse(file.shown() + ": the project has no scene");
    }
    return project.scenes().stream().findFirst();
  }
}
