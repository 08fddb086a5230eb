package lampwright.engine.review;

import java.util.function.Consumer;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;

/** Looks at a project from one side, such as its supply or its controller. */
public interface Reviewer {
  /** Finds what the project itself shows, whatever its scenes do. */
  default void project(Project project, Consumer<Finding> found) {}

  /**
   * Finds what one scene shows.
   *
   * @param report what was measured of the scene
   */
  default void scene(Project project, SceneReport report, Consumer<Finding> found) {}
}
