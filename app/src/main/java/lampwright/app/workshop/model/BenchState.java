package lampwright.app.workshop.model;

import java.util.Optional;
import lampwright.app.workshop.edit.History;
import lampwright.app.workshop.edit.Selection;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Scene;

/**
 * All that is on the bench at one moment, each part fitting the others.
 *
 * @param project as it is
 * @param selection what is selected, always within the project
 * @param frame of the scene on the bench that is shown, from 0; 0 if there is no scene
 */
public record BenchState(Project project, Selection selection, int frame) {
  /** Begins with the first scene. */
  static BenchState of(Project project) {
    return new BenchState(project, Selection.first(project), 0);
  }

  /** What an edit changes and undo brings back. */
  public History.State contents() {
    return new History.State(project, selection);
  }

  /** The scene on the bench. */
  public Optional<Scene> scene() {
    return selection.scene().flatMap(project::scene);
  }

  /**
   * Other contents; what is selected is cut to the project, and another scene begins at frame 0.
   */
  BenchState with(Project newProject, Selection newSelection) {
    Selection fitting = newSelection.within(newProject);
    boolean same = fitting.scene().equals(selection.scene());
    return new BenchState(newProject, fitting, 0).withFrame(same ? frame : 0);
  }

  /** Another frame, or the nearest that the scene has. */
  BenchState withFrame(int wanted) {
    int last = scene().map(Scene::frameCount).orElse(1) - 1;
    return new BenchState(project, selection, Math.max(0, Math.min(wanted, last)));
  }
}
