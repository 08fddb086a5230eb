package lampwright.app.workshop.view;

import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.problems.ProblemRow;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.review.Finding;
import org.jspecify.annotations.Nullable;

/** One problem: its weight as sign and word, what is the case, the limit, and what can be done. */
final class ProblemCell extends ListCell<ProblemRow> {
  private static final double SCROLL_BAR = 20;

  private final Texts texts;
  private final Label sign = new Label();
  private final Label weight = new Label();
  private final Label finding = label("problem-finding");
  private final Label limit = label("problem-limit");
  private final Label remedy = label("problem-remedy");
  private final HBox row;

  ProblemCell(Texts texts) {
    this.texts = texts;
    getStyleClass().add("problem-cell");
    sign.getStyleClass().add("problem-sign");
    weight.getStyleClass().add("problem-weight");
    VBox left = new VBox(sign, weight);
    left.getStyleClass().add("problem-left");
    VBox right = new VBox(finding, limit, remedy);
    right.setMinWidth(0);
    HBox.setHgrow(right, Priority.ALWAYS);
    row = new HBox(left, right);
    row.getStyleClass().add("problem-row");
    setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
    // As wide as the list, so that long lines are wrapped and not scrolled to.
    setPrefWidth(0);
  }

  // A list asks for heights before it knows widths; wrapped lines need theirs.
  @Override
  protected double computePrefHeight(double width) {
    if (getGraphic() == null || getListView() == null) {
      return super.computePrefHeight(width);
    }
    double room = getListView().getWidth() - SCROLL_BAR - snappedLeftInset() - snappedRightInset();
    return snapSizeY(row.prefHeight(room)) + snappedTopInset() + snappedBottomInset();
  }

  private static Label label(String style) {
    Label label = new Label();
    label.setWrapText(true);
    label.setMinHeight(USE_PREF_SIZE);
    label.getStyleClass().add(style);
    return label;
  }

  @Override
  protected void updateItem(@Nullable ProblemRow problem, boolean empty) {
    super.updateItem(problem, empty);
    if (problem == null || empty) {
      setGraphic(null);
      setAccessibleText(null);
      return;
    }
    Finding of = problem.finding();
    String key = of.severity().key();
    sign.setText(texts.get("sign." + key));
    weight.setText(texts.get("severity." + key));
    row.getStyleClass().setAll("problem-row", "problem-" + key);
    finding.setText(texts.get("finding", problem.place(), of.what()));
    show(limit, of.limitWithSource());
    show(remedy, of.remedy().isEmpty() ? "" : texts.get("remedy", of.remedy()));
    setGraphic(row);
    setAccessibleText(
        String.join(". ", weight.getText(), finding.getText(), limit.getText(), remedy.getText()));
  }

  private static void show(Label label, String text) {
    label.setText(text);
    label.setVisible(!text.isEmpty());
    label.setManaged(!text.isEmpty());
  }
}
