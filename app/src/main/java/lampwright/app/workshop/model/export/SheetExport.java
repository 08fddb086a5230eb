package lampwright.app.workshop.model.export;

import java.util.List;
import lampwright.app.sheet.Sheets;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.Project;
import lampwright.exporters.CancelledException;

/** Writes the build sheet of the project on the bench, in the background. */
public final class SheetExport {
  private final Texts texts = Texts.of("export");
  private final Bench bench;
  private final BackgroundFile files;

  public SheetExport(Bench bench, BackgroundFile files) {
    this.bench = bench;
    this.files = files;
  }

  /** Asks for a file and writes it; the builder hears when it is there, or why it is not. */
  public void build() {
    Project project = bench.project();
    files.make(
        texts.get("sheet.title"),
        "",
        List.of(Sheets.Form.PDF.ending(), Sheets.Form.HTML.ending()),
        (file, turn) -> {
          Sheets.write(
              Sheets.of(
                  project,
                  (done, total) -> {
                    if (turn.overtaken()) {
                      throw new CancelledException();
                    }
                  }),
              Sheets.Form.of(file).orElse(Sheets.Form.PDF),
              file);
          return "";
        });
  }
}
