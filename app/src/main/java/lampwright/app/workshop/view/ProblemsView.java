package lampwright.app.workshop.view;

import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import lampwright.app.workshop.model.problems.ProblemRow;
import lampwright.app.workshop.model.problems.ProblemsModel;
import lampwright.app.workshop.words.Texts;

/** The list of problems; a click, Enter or the space bar on one leads to its spot. */
public final class ProblemsView extends BorderPane {
  private final Texts texts = Texts.of("problems");
  private final ProblemsModel model;
  private final ListView<ProblemRow> list = new ListView<>();

  public ProblemsView(ProblemsModel model) {
    this.model = model;
    getStyleClass().add("problems");
    getStylesheets().add(Stylesheets.url("problems"));
    Label head = new Label();
    head.getStyleClass().add("problems-head");
    head.textProperty()
        .bind(Bindings.createStringBinding(this::headText, model.rows(), model.checkingProperty()));
    head.setLabelFor(list);
    Button explain = new Button(texts.get("explain"));
    explain.setId("problems-explain");
    explain.setTooltip(new Tooltip(texts.get("explain.hint")));
    explain.setMinWidth(USE_PREF_SIZE);
    explain.getStyleClass().add("small-toggle");
    explain.setOnAction(event -> model.explain());
    head.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(head, Priority.ALWAYS);
    HBox top = new HBox(head, explain);
    top.setAlignment(Pos.CENTER_LEFT);
    top.getStyleClass().add("problems-bar");
    setTop(top);
    list.setItems(model.rows());
    list.setCellFactory(view -> new ProblemCell(texts));
    Label none = new Label();
    none.textProperty()
        .bind(
            Bindings.when(model.checkingProperty())
                .then(texts.get("checking"))
                .otherwise(texts.get("none")));
    list.setPlaceholder(none);
    list.setAccessibleText(texts.get("list"));
    list.setOnKeyPressed(
        key -> {
          if (key.getCode() == KeyCode.ENTER || key.getCode() == KeyCode.SPACE) {
            lead();
            key.consume();
          } else if (key.getCode() == KeyCode.F1) {
            model.explain();
            key.consume();
          }
        });
    list.setOnMouseClicked(
        click -> {
          if (click.getButton() == MouseButton.PRIMARY) {
            lead();
          }
        });
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener((of, before, now) -> model.choose(Optional.ofNullable(now)));
    // A list that comes anew shows its worst.
    model.rows().addListener((ListChangeListener<ProblemRow>) change -> list.scrollTo(0));
    setCenter(list);
  }

  @Override
  public void requestFocus() {
    list.requestFocus();
  }

  private void lead() {
    ProblemRow row = list.getSelectionModel().getSelectedItem();
    if (row != null) {
      model.leadTo(row);
    }
  }

  private String headText() {
    int count = model.problems();
    int notes = model.rows().size() - count;
    if (!model.checkingProperty().get()) {
      return texts.get("count", count, notes);
    }
    // Nothing found yet is not nothing found.
    return model.rows().isEmpty()
        ? texts.get("checking")
        : texts.get("searching", texts.get("count", count, notes));
  }
}
