package lampwright.exporters;

import lampwright.engine.document.Project;
import lampwright.engine.render.FrameTable;
import lampwright.engine.scene.Scene;

/** One scene of a project to export. Immutable. */
public final class ExportJob {
  private final Project project;
  private final Scene scene;
  private final FrameTable table;
  private final ExportOptions options;

  private ExportJob(Project project, Scene scene, ExportOptions options) {
    this.project = project;
    this.scene = scene;
    this.table = FrameTable.of(project.rig(), scene);
    this.options = options;
  }

  /**
   * A job.
   *
   * @param scene one of the project's scenes
   * @throws IllegalArgumentException if it is not
   */
  public static ExportJob of(Project project, Scene scene, ExportOptions options) {
    if (!project.scenes().contains(scene)) {
      throw new IllegalArgumentException(
          "scene: " + scene.id() + ": must be a scene of the project " + project.name());
    }
    return new ExportJob(project, scene, options);
  }

  public Project project() {
    return project;
  }

  public Scene scene() {
    return scene;
  }

  /** The scene's frames, rendered when they are asked for. */
  public FrameTable table() {
    return table;
  }

  public ExportOptions options() {
    return options;
  }

  /** The name of a file of this scene: its id, a dot and the extension. */
  public String fileName(String extension) {
    return scene.id() + "." + extension;
  }

  @Override
  public String toString() {
    return "scene " + scene.id() + " of " + project.name();
  }
}
