package lampwright.app.export;

import java.util.List;
import java.util.Optional;
import lampwright.exporters.ExportFacts;

/**
 * One format of one scene, or the folder for all of them.
 *
 * @param format its key
 * @param scene id of the scene; none for the folder
 * @param facts what can be said beforehand; the files of the folder are named below it
 */
public record ExportPart(String format, Optional<String> scene, ExportFacts facts) {
  /** What appears in the output folder: the files, or the one folder. */
  public List<String> names() {
    return scene.isPresent() ? facts.files() : List.of(format);
  }
}
