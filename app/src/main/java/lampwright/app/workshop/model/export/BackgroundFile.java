package lampwright.app.workshop.model.export;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.function.Supplier;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.files.Failures;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;
import lampwright.engine.work.LatestWorker;
import lampwright.exporters.CancelledException;

/**
 * Asks for a file and writes it in the background; the builder hears when it is there, or why it is
 * not.
 */
public final class BackgroundFile {
  private static final String PROJECT_ENDING = ".lampwright.json";

  /** What is written. */
  @FunctionalInterface
  interface Contents {
    /**
     * Writes the file whole, or leaves what was there.
     *
     * @param turn whether this is still wanted
     * @return what is to be known beside; may be empty
     */
    String write(Path file, LatestWorker.Turn turn) throws IOException, CancelledException;
  }

  private final Texts texts = Texts.of("export");
  private final Dialogs dialogs;
  private final LatestWorker worker;
  private final Executor screen;
  private final Supplier<Optional<Path>> projectFile;

  /**
   * @param worker writes; one whose work asks whether it is overtaken
   * @param screen runs what it is given on the screen's thread
   * @param projectFile where the project was saved
   */
  public BackgroundFile(
      Dialogs dialogs, LatestWorker worker, Executor screen, Supplier<Optional<Path>> projectFile) {
    this.dialogs = dialogs;
    this.worker = worker;
    this.screen = screen;
    this.projectFile = projectFile;
  }

  /** Where the project was saved. */
  Optional<Path> project() {
    return projectFile.get();
  }

  /**
   * Asks, and writes.
   *
   * @param title what it is
   * @param addition to the project's name, in the name that is suggested
   * @param endings of the files that there can be, such as {@code .pdf}; the first is that of any
   *     other name
   */
  void make(String title, String addition, List<String> endings, Contents contents) {
    dialogs
        .fileToSave(
            title,
            stem() + addition + endings.get(0),
            endings.stream().map(ending -> "*" + ending).toList())
        .ifPresent(asked -> write(title, named(asked, endings), contents));
  }

  private String stem() {
    String name =
        projectFile.get().map(file -> String.valueOf(file.getFileName())).orElse("lampwright");
    return name.endsWith(PROJECT_ENDING)
        ? name.substring(0, name.length() - PROJECT_ENDING.length())
        : name;
  }

  private static Path named(Path asked, List<String> endings) {
    String name = String.valueOf(asked.getFileName());
    return endings.stream().anyMatch(name.toLowerCase(Locale.ROOT)::endsWith)
        ? asked
        : asked.resolveSibling(name + endings.get(0));
  }

  private void write(String title, Path file, Contents contents) {
    worker.request(
        turn -> {
          String said = written(file, contents, turn);
          if (!turn.overtaken()) {
            screen.execute(() -> dialogs.tell(title, said));
          }
        });
  }

  private String written(Path file, Contents contents, LatestWorker.Turn turn) {
    try {
      String beside = contents.write(file, turn);
      String written = texts.get("file.written", SafeText.text(file + "", SafeText.MAX_MESSAGE));
      return beside.isEmpty() ? written : written + "\n" + beside;
    } catch (IOException failed) {
      return Failures.words(failed);
    } catch (CancelledException | CancellationException ended) {
      return texts.get("cancelled");
    }
  }
}
