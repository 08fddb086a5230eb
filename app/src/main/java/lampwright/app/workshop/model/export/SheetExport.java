package lampwright.app.workshop.model.export;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.function.Supplier;
import lampwright.app.sheet.Sheets;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.Dialogs;
import lampwright.app.workshop.model.files.Failures;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Project;
import lampwright.engine.work.LatestWorker;
import lampwright.exporters.CancelledException;

/** Writes the build sheet of the project on the bench, in the background. */
public final class SheetExport {
  private static final String ENDING = ".lampwright.json";

  private final Texts texts = Texts.of("export");
  private final Bench bench;
  private final Dialogs dialogs;
  private final LatestWorker worker;
  private final Executor screen;
  private final Supplier<Optional<Path>> projectFile;

  /**
   * @param worker writes; one whose work asks whether it is overtaken
   * @param screen runs what it is given on the screen's thread
   * @param projectFile where the project was saved
   */
  public SheetExport(
      Bench bench,
      Dialogs dialogs,
      LatestWorker worker,
      Executor screen,
      Supplier<Optional<Path>> projectFile) {
    this.bench = bench;
    this.dialogs = dialogs;
    this.worker = worker;
    this.screen = screen;
    this.projectFile = projectFile;
  }

  /** Asks for a file and writes it; the builder hears when it is there, or why it is not. */
  public void build() {
    dialogs
        .fileToSave(texts.get("sheet.title"), suggested(), List.of("*.pdf", "*.html"))
        .ifPresent(this::write);
  }

  private String suggested() {
    String name =
        projectFile.get().map(file -> String.valueOf(file.getFileName())).orElse("lampwright");
    String stem = name.endsWith(ENDING) ? name.substring(0, name.length() - ENDING.length()) : name;
    return stem + Sheets.Form.PDF.ending();
  }

  private void write(Path asked) {
    Sheets.Form form = Sheets.Form.of(asked).orElse(Sheets.Form.PDF);
    Path file =
        Sheets.Form.of(asked).isPresent()
            ? asked
            : asked.resolveSibling(asked.getFileName() + form.ending());
    Project project = bench.project();
    worker.request(
        turn -> {
          String said = write(project, form, file, turn);
          if (!turn.overtaken()) {
            screen.execute(() -> dialogs.tell(texts.get("sheet.title"), said));
          }
        });
  }

  private String write(Project project, Sheets.Form form, Path file, LatestWorker.Turn turn) {
    try {
      Sheets.write(
          Sheets.of(
              project,
              (done, total) -> {
                if (turn.overtaken()) {
                  throw new CancelledException();
                }
              }),
          form,
          file);
      return texts.get("sheet.written", SafeText.text(file.toString(), SafeText.MAX_MESSAGE));
    } catch (IOException failed) {
      return Failures.words(failed);
    } catch (CancelledException | CancellationException ended) {
      return texts.get("cancelled");
    }
  }
}
