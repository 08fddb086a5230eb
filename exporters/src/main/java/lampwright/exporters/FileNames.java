package lampwright.exporters;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import lampwright.engine.document.Project;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Reviewer;
import lampwright.engine.review.Subject;
import lampwright.engine.scene.Scene;

/**
 * Whether the id of a scene can be the name of a file on every system that a builder may carry it
 * to. Ids hold lower-case letters, digits and hyphens, so that little is left to refuse.
 */
public final class FileNames implements Reviewer {
  // Names of devices whatever follows the dot (published: Microsoft, "Naming Files, Paths, and
  // Namespaces").
  private static final Pattern DEVICES = Pattern.compile("con|prn|aux|nul|(com|lpt)[0-9]");

  /** Keeps nothing, so one serves all. */
  public FileNames() {}

  /** Why the files of a scene can't be written; none if they can. */
  public static Optional<Finding> refusal(Scene scene) {
    String id = scene.id();
    if (DEVICES.matcher(id).matches()) {
      return Optional.of(finding(scene, "Windows keeps that name for a device", "scene-" + id));
    }
    if (id.startsWith("-")) {
      return Optional.of(
          finding(scene, "command lines take such a name for an option", "scene" + id));
    }
    return Optional.empty();
  }

  private static Finding finding(Scene scene, String reason, String instead) {
    return Finding.of(Code.FILE_NAME, new Subject.OneScene(scene.id()))
        .with("file", Figure.words(scene.id()))
        .with("reason", Figure.words(reason))
        .with("suggestion", Figure.words(instead))
        .make();
  }

  @Override
  public void project(Project project, Consumer<Finding> found) {
    project.scenes().forEach(scene -> refusal(scene).ifPresent(found));
  }
}
