package lampwright.exporters;

import java.util.List;
import java.util.Optional;
import lampwright.engine.document.Project;
import lampwright.engine.render.FrameTable;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Show;

/** Scenes of a project to export together. Immutable. */
public final class ProjectJob {
  private final Project project;
  private final List<Scene> scenes;
  private final List<FrameTable> tables;

  private ProjectJob(Project project, List<Scene> scenes) {
    this.project = project;
    this.scenes = List.copyOf(scenes);
    this.tables = scenes.stream().map(scene -> FrameTable.of(project.rig(), scene)).toList();
  }

  /**
   * A job.
   *
   * @param scenes some of the project's scenes; may be none
   * @throws IllegalArgumentException if one is not of the project
   */
  public static ProjectJob of(Project project, List<Scene> scenes) {
    for (Scene scene : scenes) {
      if (!project.scenes().contains(scene)) {
        throw new IllegalArgumentException(
            "scene: " + scene.id() + ": must be a scene of the project " + project.name());
      }
    }
    return new ProjectJob(project, scenes);
  }

  public Project project() {
    return project;
  }

  public List<Scene> scenes() {
    return scenes;
  }

  /** The frames of each scene, rendered when they are asked for. */
  public List<FrameTable> tables() {
    return tables;
  }

  /**
   * What the project's situations do with the scenes; none if they name no scene, or one that is
   * not of this job, or can't be played together.
   */
  public Optional<Show> show() {
    return hasScenesOfSituations()
        ? Show.ifPlayable(project.rig(), scenes, project.situations())
        : Optional.empty();
  }

  /** Whether situations name scenes, all of them of this job: {@link #show} says if they can. */
  public boolean asksForSituations() {
    return hasScenesOfSituations()
        && project.situations().stream().anyMatch(situation -> situation.scene().isPresent());
  }

  private boolean hasScenesOfSituations() {
    return project.situations().stream()
        .flatMap(situation -> situation.scene().stream())
        .allMatch(id -> scenes.stream().anyMatch(scene -> scene.id().equals(id)));
  }

  @Override
  public String toString() {
    return scenes.size() + " scenes of " + project.name();
  }
}
