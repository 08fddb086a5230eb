package lampwright.app.workshop.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Asks the builder; the window does it with dialogs, a test with ready answers. */
public interface Dialogs {
  /**
   * Asks a question.
   *
   * @param title what it is about
   * @param text all that is needed to decide
   * @param answers what can be answered, the harmless one last
   * @return the index of the answer; the last one if the question was closed
   */
  int choose(String title, String text, List<String> answers);

  /** Asks for an existing file; {@code patterns} such as {@code *.png}. */
  Optional<Path> fileToOpen(String title, List<String> patterns);

  /** Asks for the place of a file to write. */
  Optional<Path> fileToSave(String title, String suggestedName, List<String> patterns);

  /** Asks for a folder. */
  Optional<Path> folder(String title);

  /** Tells something that must be read. */
  void tell(String title, String text);
}
