package lampwright.app.sheet;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lampwright.app.review.Reviews;
import lampwright.engine.disk.WholeFile;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Review;
import lampwright.engine.scene.Scene;
import lampwright.exporters.CancelledException;
import lampwright.exporters.Progress;
import lampwright.exporters.sheet.BuildSheet;
import lampwright.exporters.sheet.SheetHtml;
import lampwright.exporters.sheet.SheetMaker;

/** Build sheets of projects, for the command line and the workshop. */
public final class Sheets {
  /** The forms that a sheet can have. */
  public enum Form {
    HTML,
    PDF;

    /** How the names of such files end, with the point. */
    public String ending() {
      return "." + name().toLowerCase(Locale.ROOT);
    }

    /** The form of a file, by the end of its name; none if it is neither. */
    public static Optional<Form> of(Path file) {
      String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
      for (Form form : values()) {
        if (name.endsWith(form.ending())) {
          return Optional.of(form);
        }
      }
      return Optional.empty();
    }
  }

  private Sheets() {}

  /**
   * The sheet of a project. This renders and measures all its scenes.
   *
   * @param progress hears of the packing, which is done where scenes may be too large
   * @throws java.util.concurrent.CancellationException if the thread is interrupted
   */
  public static BuildSheet of(Project project, Progress progress) throws CancelledException {
    List<SceneReport> reports = new ArrayList<>();
    for (Scene scene : project.scenes()) {
      reports.add(SceneReport.of(FrameTable.of(project.rig(), scene)));
    }
    return SheetMaker.make(
        project, reports, Review.measureShow(project), Reviews.of(project, reports, progress));
  }

  /**
   * Writes a sheet whole or not at all; the same sheet has the same bytes.
   *
   * @throws IOException if it cannot be written; its message names the file and the reason
   */
  public static void write(BuildSheet sheet, Form form, Path file) throws IOException {
    switch (form) {
      case HTML -> WholeFile.write(file, SheetHtml.write(sheet));
      case PDF -> {
        byte[] pdf = SheetPdf.of(sheet);
        WholeFile.write(file, out -> out.write(pdf));
      }
    }
  }
}
