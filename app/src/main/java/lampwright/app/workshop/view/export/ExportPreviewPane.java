package lampwright.app.workshop.view.export;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.export.ExportModel;
import lampwright.app.workshop.model.export.ExportPreview;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.review.Finding;

/** What will be written: why not, cautions, sizes, files. */
final class ExportPreviewPane extends VBox {
  private final ExportModel model;
  private final Texts texts;

  ExportPreviewPane(ExportModel model, Texts texts) {
    this.model = model;
    this.texts = texts;
    getStyleClass().add("export-preview");
    model.previewProperty().addListener((of, before, now) -> show(now));
    show(model.previewProperty().get());
  }

  private void show(ExportPreview preview) {
    getChildren().clear();
    if (!preview.refusals().isEmpty()) {
      part("refusals", lines(preview.refusals(), "export-refusal"));
    }
    part("cautions", cautions(preview));
    part("sizes", sizes(preview));
    part(
        "places",
        lines(
            preview.places().stream()
                .map(
                    place ->
                        texts.get(
                            place.stands() ? "place.stands" : "place.new",
                            place.path().getFileName()))
                .toList(),
            "export-place"));
  }

  private void part(String key, Node content) {
    Label head = new Label(texts.get(key));
    head.getStyleClass().add("export-head");
    getChildren().addAll(head, content);
  }

  private Node cautions(ExportPreview preview) {
    if (!preview.findings().isEmpty()) {
      VBox box = lines(List.of(), "");
      for (Finding finding : preview.findings()) {
        String severity = finding.severity().key();
        box.getChildren()
            .add(
                label(texts.get("finding." + severity, model.line(finding)), "export-" + severity));
      }
      if (!preview.complete()) {
        box.getChildren().add(label(texts.get("cautions.measuring"), "export-none"));
      }
      return box;
    }
    String none = preview.complete() ? "cautions.none" : "cautions.measuring";
    return label(texts.get(none), "export-none");
  }

  private VBox lines(List<String> lines, String style) {
    VBox box = new VBox();
    box.getStyleClass().add("export-lines");
    lines.forEach(line -> box.getChildren().add(label(line, style)));
    return box;
  }

  private static Label label(String text, String style) {
    Label label = new Label(text);
    label.setWrapText(true);
    label.setMinHeight(USE_PREF_SIZE);
    label.getStyleClass().add(style);
    return label;
  }

  private Node sizes(ExportPreview preview) {
    GridPane grid = new GridPane();
    grid.getStyleClass().add("export-sizes");
    grid.addRow(
        0,
        cell(texts.get("size.scene"), "export-column"),
        label(texts.get("size.raw"), "export-column"),
        label(texts.get("size.packed"), "export-column"));
    int row = 1;
    for (ExportPreview.Size size : preview.sizes()) {
      String unknown = preview.complete() ? "size.impossible" : "size.unknown";
      grid.addRow(
          row++,
          cell(size.scene(), "export-size"),
          label(bytes(OptionalLong.of(size.rawBytes()), size.rawShare(), unknown), "export-size"),
          label(bytes(size.packedBytes(), size.packedShare(), unknown), "export-size"));
    }
    return grid;
  }

  private static Label cell(String text, String style) {
    Label label = label(text, style);
    label.setWrapText(false);
    label.setMinWidth(USE_PREF_SIZE);
    return label;
  }

  private String bytes(OptionalLong bytes, OptionalDouble share, String unknown) {
    if (bytes.isEmpty()) {
      return texts.get(unknown);
    }
    String count = Long.toString(bytes.getAsLong());
    // Rounded up, so that what does not quite fit never reads 100 %.
    return share.isPresent()
        ? texts.get(
            "size.share",
            count,
            String.format(Locale.ROOT, "%.1f\u00a0%%", Math.ceil(share.getAsDouble() * 1000) / 10))
        : texts.get("size.bytes", count);
  }
}
