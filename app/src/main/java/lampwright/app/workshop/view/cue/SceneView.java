package lampwright.app.workshop.view.cue;

import java.util.List;
import java.util.stream.Collectors;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.command.Command;
import lampwright.app.workshop.model.command.Commands;
import lampwright.app.workshop.model.rig.SceneModel;
import lampwright.app.workshop.view.form.FormContext;
import lampwright.app.workshop.view.form.FormView;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;
import lampwright.engine.rig.Lamp;

/** The scene while no cue is selected: its settings, what it costs, and what can be done next. */
public final class SceneView extends ScrollPane {
  /** What usually comes next. */
  private static final List<String> NEXT =
      List.of("shelf.act.show", "ribbons.act.add", "rig.act.copyScene", "rig.act.addScene");

  private static final double FORM_WIDTH = 236;
  private static final double NEXT_WIDTH = 210;
  private static final double GAP = 8;
  private static final int MOST_NAMES = 200;

  private final Texts texts = Texts.of("scene");
  private final SceneModel model;
  private final GridPane costs = new GridPane();
  private final VBox next = new VBox();
  private final VBox dark = new VBox();
  private final Label darkNames = new Label();

  public SceneView(SceneModel model) {
    this.model = model;
    setId("scene-view");
    getStyleClass().addAll("form", "scene-view");
    setFitToWidth(true);
    setFocusTraversable(false);
    FormView form = new FormView(new FormContext(), model.formProperty());
    form.setFocusTraversable(false);
    // What is around it scrolls.
    form.setVbarPolicy(ScrollBarPolicy.NEVER);
    form.setHbarPolicy(ScrollBarPolicy.NEVER);
    form.setPrefWidth(FORM_WIDTH);
    costs.getStyleClass().add("scene-costs");
    next.getStyleClass().add("scene-next");
    dark.getStyleClass().add("scene-next");
    darkNames.setWrapText(true);
    darkNames.setMaxWidth(NEXT_WIDTH);
    darkNames.getStyleClass().add("form-hint");
    Button select = new Button(texts.get("dark.select"));
    select.setId("scene-dark");
    select.setOnAction(event -> model.selectDark());
    dark.getChildren().setAll(darkNames, select);
    FlowPane groups =
        new FlowPane(form, group("costs", costs), group("next", new VBox(GAP, next, dark)));
    groups.getStyleClass().add("scene-groups");
    setContent(groups);
    model.costsProperty().addListener((of, before, now) -> listCosts());
    model.darkProperty().addListener((of, before, now) -> listDark());
    listCosts();
    listDark();
  }

  /** Takes the commands that it offers. */
  public void setCommands(Commands commands) {
    next.getChildren().clear();
    for (String id : NEXT) {
      Command command = commands.find(id);
      Button button = new Button();
      button.setId("scene-next-" + id.replace('.', '-'));
      String keys =
          command.shortcut().isEmpty()
              ? ""
              : "  " + KeyCombination.valueOf(command.shortcut()).getDisplayText();
      button.textProperty().bind(Bindings.concat(command.words(), keys));
      button.setMnemonicParsing(false);
      button
          .disableProperty()
          .bind(Bindings.createBooleanBinding(() -> !command.enabled().get(), command.enabled()));
      button.setOnAction(event -> command.run().run());
      next.getChildren().add(button);
    }
    Label hint = new Label(texts.get("hint"));
    hint.setWrapText(true);
    hint.setMaxWidth(NEXT_WIDTH);
    hint.getStyleClass().add("form-hint");
    next.getChildren().add(hint);
  }

  private VBox group(String key, Node content) {
    Label title = new Label(texts.get("group." + key));
    title.getStyleClass().add("form-title");
    VBox group = new VBox(GAP, title, content);
    group.getStyleClass().add("scene-group");
    return group;
  }

  private void listCosts() {
    costs.getChildren().clear();
    int row = 0;
    for (SceneModel.Cost cost : model.costsProperty().get()) {
      costs.addRow(row++, label(cost.label(), "form-name"), label(cost.value(), "scene-value"));
      costs.add(label(cost.more(), "scene-more"), 1, row++);
    }
  }

  private void listDark() {
    List<Lamp> lamps = model.darkProperty().get();
    dark.setVisible(!lamps.isEmpty());
    dark.setManaged(!lamps.isEmpty());
    String names = lamps.stream().map(Lamp::title).collect(Collectors.joining(", "));
    darkNames.setText(texts.get("dark", lamps.size(), SafeText.text(names, MOST_NAMES)));
  }

  private static Label label(String words, String style) {
    Label label = new Label(words);
    label.getStyleClass().add(style);
    return label;
  }
}
