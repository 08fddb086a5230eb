package lampwright.app.workshop.view;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.Checks;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Controller;
import lampwright.engine.scene.Scene;

/** What stands at the foot of a drawing sheet: the facts of the project and of its scene. */
final class TitleBlock extends GridPane {
  private static final int COLUMNS = 12;

  private final Texts texts = Texts.of("workshop");
  private final Bench bench;
  private final Supplier<String> saved;
  private final Label model = new Label();
  private final Label scene = new Label();
  private final Label length = new Label();
  private final Label supply = new Label();
  private final Label controller = new Label();
  private final Label file = new Label();

  /**
   * @param saved says how the project's file is
   */
  TitleBlock(Bench bench, Supplier<String> saved) {
    this.bench = bench;
    this.saved = saved;
    setId("title-block");
    getStyleClass().add("title-block");
    for (int i = 0; i < COLUMNS; i++) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(100.0 / COLUMNS);
      getColumnConstraints().add(column);
    }
    cell("title.model", model, "title-large", 0, 0, 8);
    cell("title.scene", scene, "title-large", 8, 0, 4);
    cell("title.length", length, "title-value", 0, 1, 4);
    cell("title.supply", supply, "title-value", 4, 1, 2);
    cell("title.controller", controller, "title-value", 6, 1, 3);
    cell("title.file", file, "title-value", 9, 1, 3);
    bench.watch(BenchState::contents, (before, now) -> show());
    show();
  }

  private void cell(String name, Label value, String style, int column, int row, int span) {
    Label label = new Label(texts.get(name));
    label.getStyleClass().add("title-name");
    label.setLabelFor(value);
    value.getStyleClass().add(style);
    value.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
    value.setId(name.replace('.', '-'));
    VBox cell = new VBox(label, value);
    cell.getStyleClass().add("title-cell");
    cell.setMinWidth(0);
    add(cell, column, row, span, 1);
  }

  /** Shows what is true now. */
  void show() {
    Project project = bench.project();
    Optional<Scene> now = bench.scene();
    model.setText(project.name().isEmpty() ? texts.get("title.unnamed") : project.name());
    scene.setText(now.map(Scene::id).orElse(texts.get("title.none")));
    length.setText(
        now.map(
                s ->
                    texts.get(
                        "title.length.value",
                        String.format(
                            Locale.ROOT,
                            "%.2f",
                            s.frameCount() / s.framesPerSecond().doubleValue()),
                        s.framesPerSecond().toPlainString()))
            .orElse(texts.get("title.none")));
    supply.setText(texts.get("title.supply.value", Checks.plain(project.rig().supplyVolts())));
    controller.setText(
        project.rig().controller().map(Controller::name).orElse(texts.get("title.none")));
    file.setText(saved.get());
  }
}
