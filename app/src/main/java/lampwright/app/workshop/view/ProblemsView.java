package lampwright.app.workshop.view;

import javafx.beans.binding.Bindings;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.BorderPane;
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
        .bind(
            Bindings.createStringBinding(this::headText, model.rows(), model.searchingProperty()));
    head.setLabelFor(list);
    setTop(head);
    list.setItems(model.rows());
    list.setCellFactory(view -> new ProblemCell(texts));
    list.setPlaceholder(new Label(texts.get("none")));
    list.setAccessibleText(texts.get("list"));
    list.setOnKeyPressed(
        key -> {
          if (key.getCode() == KeyCode.ENTER || key.getCode() == KeyCode.SPACE) {
            lead();
            key.consume();
          }
        });
    list.setOnMouseClicked(
        click -> {
          if (click.getButton() == MouseButton.PRIMARY) {
            lead();
          }
        });
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
    String head = texts.get("count", count, notes);
    return model.searchingProperty().get() ? texts.get("searching", head) : head;
  }
}
