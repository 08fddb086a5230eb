package lampwright.app.workshop.view.start;

import java.util.List;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Spinner;
import javafx.scene.control.SpinnerValueFactory;
import javafx.scene.layout.GridPane;
import lampwright.app.outline.UsualLamp;
import lampwright.app.outline.UsualLamp.UsualFitting;
import lampwright.app.outline.UsualLamps;
import lampwright.app.workshop.model.start.StartModel;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.ModelKind;

/** The groups of lamps of a model, each with a check mark and a number, in two columns. */
final class LampChecklist extends GridPane {
  /** Grid columns of one group: name, what it consists of, number. */
  private static final int CELLS = 3;

  private final Texts texts = Texts.of("start");
  private final StartModel model;

  LampChecklist(StartModel model) {
    this.model = model;
    getStyleClass().add("start-lamps");
    list(model.request().kind());
    model
        .requestProperty()
        .addListener(
            (of, before, now) -> {
              if (before.kind() != now.kind()) {
                list(now.kind());
              }
            });
  }

  private void list(ModelKind kind) {
    getChildren().clear();
    List<UsualLamp> groups = UsualLamps.of(kind);
    int rows = (groups.size() + 1) / 2;
    // Down the first column and then the second, also by the Tab key.
    for (int k = 0; k < groups.size(); k++) {
      add(groups.get(k), k / rows * CELLS, k % rows);
    }
  }

  private void add(UsualLamp group, int column, int row) {
    int count = model.request().counts().getOrDefault(group.key(), 0);
    CheckBox check = new CheckBox(group.title());
    check.setId("start-lamp-" + group.key());
    check.setSelected(count > 0);
    Label each = new Label(words(group.fitting()));
    each.getStyleClass().add("start-soft");
    Spinner<Integer> number =
        new Spinner<>(
            new SpinnerValueFactory.IntegerSpinnerValueFactory(
                1, group.greatest(), Math.max(1, count)));
    number.setId("start-count-" + group.key());
    number.getStyleClass().addAll(Spinner.STYLE_CLASS_SPLIT_ARROWS_HORIZONTAL, "start-count");
    number.setAccessibleText(texts.get("count", group.title()));
    number.getEditor().setAccessibleText(texts.get("count", group.title()));
    number.disableProperty().bind(check.selectedProperty().not());
    Runnable tell = () -> model.count(group.key(), check.isSelected() ? number.getValue() : 0);
    check.selectedProperty().addListener((of, before, now) -> tell.run());
    number.valueProperty().addListener((of, before, now) -> tell.run());
    add(check, column, row);
    add(each, column + 1, row);
    add(number, column + 2, row);
  }

  private String words(UsualFitting fitting) {
    return fitting instanceof UsualFitting.Pixels pixels
        ? texts.get("each.pixels", pixels.count())
        : texts.get("each.led");
  }
}
