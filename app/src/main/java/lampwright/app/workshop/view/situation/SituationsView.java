package lampwright.app.workshop.view.situation;

import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.situation.Rung;
import lampwright.app.workshop.model.situation.SituationsModel;
import lampwright.app.workshop.model.situation.Transmitter;
import lampwright.app.workshop.view.PanelParts;
import lampwright.app.workshop.view.Theme;
import lampwright.app.workshop.view.form.FormContext;
import lampwright.app.workshop.view.form.FormPane;
import lampwright.app.workshop.words.Texts;

/**
 * The situations: their ladder, beside it the conditions and values of the selected one, and the
 * stand-in transmitter.
 */
public final class SituationsView extends HBox {
  private static final double LADDER_EM = 25;
  private static final double LADDER_LEAST_EM = 17;
  private static final double TRANSMITTER_EM = 22;

  /** The least width of the values with the transmitter beside them, in lines of text. */
  private static final double SHEET_LEAST_EM = 26;

  private final Texts texts = Texts.of("situations");
  private final SituationsModel model;
  private final ListView<Rung> list = new ListView<>();
  private boolean lists;

  public SituationsView(SituationsModel model, Transmitter transmitter, Runnable addInput) {
    this.model = model;
    getStyleClass().add("situations");
    setId("situations");
    list.setId("ladder");
    list.setAccessibleText(texts.get("ladder"));
    Label empty = new Label(texts.get("empty"));
    empty.setWrapText(true);
    empty.getStyleClass().add("form-hint");
    list.setPlaceholder(empty);
    list.setCellFactory(view -> new RungCell(transmitter));
    list.getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (of, before, now) -> {
              if (!lists && now != null) {
                model.chosenProperty().set(Optional.of(now.id()));
              }
            });
    list.addEventHandler(KeyEvent.KEY_PRESSED, this::pressed);
    model.rungsProperty().addListener((of, before, now) -> show());
    model.chosenProperty().addListener((of, before, now) -> show());
    show();
    VBox ladder = new VBox(buttons(), list);
    VBox.setVgrow(list, Priority.ALWAYS);
    ladder.setMinWidth(LADDER_LEAST_EM * Theme.LEAST_SIZE);
    ladder.setPrefWidth(LADDER_EM * Theme.LEAST_SIZE);
    Node values = sheet(new FormContext());
    Node controls = new TransmitterPane(transmitter, addInput);
    VBox column = new VBox(values);
    ScrollPane sheet = PanelParts.scrolling(column);
    sheet.setId("situation-sheet");
    HBox.setHgrow(sheet, Priority.ALWAYS);
    VBox side = new VBox(controls);
    ScrollPane sticks = PanelParts.scrolling(side);
    sticks.setMinWidth(TRANSMITTER_EM * Theme.LEAST_SIZE);
    sticks.setPrefWidth(TRANSMITTER_EM * Theme.LEAST_SIZE);
    getChildren().setAll(ladder, sheet, sticks);
    transmitter
        .onProperty()
        .addListener(
            (of, before, now) -> {
              if (now) {
                scrollTo(sheet, column, controls);
              }
            });
    widthProperty()
        .addListener(
            (of, before, now) -> {
              boolean beside =
                  now.doubleValue()
                      >= (LADDER_LEAST_EM + SHEET_LEAST_EM + TRANSMITTER_EM) * Theme.LEAST_SIZE;
              if (beside != side.getChildren().contains(controls)) {
                (beside ? side : column).getChildren().add(controls);
                sticks.setVisible(beside);
                sticks.setManaged(beside);
              }
            });
  }

  // Below the values it is out of sight until it is asked for.
  private static void scrollTo(ScrollPane pane, VBox column, Node node) {
    if (column.getChildren().contains(node)) {
      pane.layout();
      double over = column.getHeight() - pane.getViewportBounds().getHeight();
      pane.setVvalue(over <= 0 ? 0 : Math.min(1, node.getBoundsInParent().getMinY() / over));
    }
  }

  private Node sheet(FormContext context) {
    FormPane values = new FormPane(context, model.formProperty());
    ConditionsPane conditions = new ConditionsPane(context, model);
    Label none = new Label(texts.get("none"));
    none.getStyleClass().addAll("form-hint", "conditions");
    VBox all = new VBox(none, conditions, values);
    Runnable show =
        () -> {
          boolean any = model.formProperty().get().isPresent();
          for (Node node : List.of(conditions, values)) {
            node.setVisible(any);
            node.setManaged(any);
          }
          none.setVisible(!any);
          none.setManaged(!any);
        };
    model.formProperty().addListener((of, before, now) -> show.run());
    show.run();
    return all;
  }

  private FlowPane buttons() {
    FlowPane buttons =
        new FlowPane(
            4,
            4,
            button("add", model::add),
            button("raise", () -> model.raise(1)),
            button("lower", () -> model.raise(-1)),
            button("remove", model::remove));
    buttons.getStyleClass().add("rig-buttons");
    return buttons;
  }

  private Button button(String key, Runnable run) {
    Button button = PanelParts.button("situation-" + key, texts.get("button." + key), run);
    if (!key.equals("add")) {
      button.setDisable(model.chosenProperty().get().isEmpty());
      model.chosenProperty().addListener((of, before, now) -> button.setDisable(now.isEmpty()));
    }
    return button;
  }

  private void show() {
    lists = true;
    List<Rung> rungs = model.rungsProperty().get();
    if (!list.getItems().equals(rungs)) {
      list.getItems().setAll(rungs);
    }
    Optional<Rung> selected =
        rungs.stream()
            .filter(r -> model.chosenProperty().get().equals(Optional.of(r.id())))
            .findFirst();
    if (selected.isPresent()) {
      if (!selected.get().equals(list.getSelectionModel().getSelectedItem())) {
        list.getSelectionModel().select(selected.get());
        list.scrollTo(selected.get());
      }
    } else {
      list.getSelectionModel().clearSelection();
    }
    lists = false;
  }

  private void pressed(KeyEvent event) {
    boolean moves = event.isAltDown();
    Optional<Runnable> run =
        switch (event.getCode()) {
          case UP -> moves ? Optional.of(() -> model.raise(1)) : Optional.<Runnable>empty();
          case DOWN -> moves ? Optional.of(() -> model.raise(-1)) : Optional.<Runnable>empty();
          case INSERT -> Optional.of(model::add);
          case DELETE -> Optional.of(model::remove);
          default -> Optional.<Runnable>empty();
        };
    run.ifPresent(
        command -> {
          command.run();
          event.consume();
        });
  }
}
