package lampwright.app.workshop.view.start;

import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.start.StartModel;
import lampwright.app.workshop.words.Texts;

/** The foot of the start sheet: name, figures, and the button that makes it. */
final class StartTitleBlock extends VBox {
  private static final double MAKING_WIDTH = 190;
  private static final double SCENE_WIDTH = 150;
  private static final double FIGURE_WIDTH = 100;

  private final Texts texts = Texts.of("start");
  private final StartModel model;
  private final TextField name = new TextField();
  private final Label refusal = new Label();
  private final Label scene = value("");
  private final HBox figures = new HBox();

  StartTitleBlock(StartModel model) {
    this.model = model;
    getStyleClass().add("start-foot");
    name.setId("start-name");
    name.setAccessibleText(texts.get("name"));
    name.setText(model.request().name());
    name.textProperty().addListener((of, before, now) -> model.name(now));
    Button make = new Button(texts.get("make"));
    make.setId("start-make");
    make.setDefaultButton(true);
    make.getStyleClass().add("primary");
    make.setMaxWidth(Double.MAX_VALUE);
    make.setAccessibleHelp(texts.get("make.more"));
    make.setOnAction(event -> model.make());
    refusal.setId("start-refusal");
    refusal.getStyleClass().add("start-refusal");
    refusal.setWrapText(true);
    figures.getStyleClass().add("start-figures");
    VBox naming = cell(soft(texts.get("name")), name);
    HBox.setHgrow(naming, Priority.ALWAYS);
    VBox making = cell(make);
    making.getStyleClass().add("start-cell-last");
    making.setPrefWidth(MAKING_WIDTH);
    VBox first = cell(soft(texts.get("scene")), scene);
    first.setPrefWidth(SCENE_WIDTH);
    VBox block = new VBox(new HBox(naming, first, making), figures);
    block.getStyleClass().add("start-block");
    getChildren().setAll(refusal, block);
    model.requestProperty().addListener((of, before, now) -> follow(now.name()));
    model.outcomeProperty().addListener((of, before, now) -> refresh());
    model.refusalProperty().addListener((of, before, now) -> refresh());
    make.disableProperty().bind(model.refusalProperty().map(java.util.Optional::isPresent));
    refresh();
  }

  private void follow(String now) {
    if (!now.equals(name.getText())) {
      name.setText(now);
    }
  }

  private void refresh() {
    refusal.setText(model.refusalProperty().get().orElse(""));
    refusal.setManaged(!refusal.getText().isEmpty());
    model
        .outcomeProperty()
        .get()
        .ifPresent(
            outcome ->
                scene.setText(
                    texts.get("scene.value", outcome.made().project().scenes().get(0).id())));
    figures.getChildren().clear();
    for (StartModel.Figure figure : model.figures()) {
      Label more = soft(figure.more());
      more.setWrapText(true);
      VBox cell = cell(soft(figure.label()), value(figure.value()), more);
      cell.setPrefWidth(FIGURE_WIDTH);
      HBox.setHgrow(cell, Priority.ALWAYS);
      figures.getChildren().add(cell);
    }
    Label more = soft(texts.get("make.more"));
    more.setWrapText(true);
    VBox last = cell(more);
    last.getStyleClass().add("start-cell-last");
    last.setPrefWidth(MAKING_WIDTH);
    figures.getChildren().add(last);
  }

  private static VBox cell(javafx.scene.Node... nodes) {
    VBox cell = new VBox(nodes);
    cell.getStyleClass().add("start-cell");
    return cell;
  }

  private static Label soft(String words) {
    Label label = new Label(words);
    label.getStyleClass().add("start-soft");
    return label;
  }

  private static Label value(String words) {
    Label label = new Label(words);
    label.setMinWidth(USE_PREF_SIZE);
    label.getStyleClass().add("start-value");
    return label;
  }
}
