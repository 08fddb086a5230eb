package lampwright.app.export;

import java.util.List;
import java.util.Optional;
import lampwright.exporters.ExportFacts;

/**
 * One format of one scene, or what is made for all of them: a folder, or one file.
 *
 * @param format its key
 * @param scene id of the scene; none for all of them
 * @param facts what can be said beforehand; the files of the folder are named below it
 */
public record ExportPart(String format, Optional<String> scene, ExportFacts facts) {
  /** What appears in the output folder: the files, or the one folder. */
  public List<String> names() {
    return format.equals(ExportFormats.FIRMWARE) ? List.of(format) : facts.files();
  }
}
