package lampwright.app.workshop.view.live;

import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.live.NamingWalk;
import lampwright.app.workshop.view.PanelParts;
import lampwright.app.workshop.words.Texts;
import org.jspecify.annotations.Nullable;

/** The walk along a chain: the pixel that is lit, and the lamps that it may be. */
final class NamingPane extends VBox {
  private static final double ROWS_EM = 9;

  private final Texts texts = Texts.of("live");
  private final NamingWalk walk;
  private final Label step = Lines.of("walk-step", "link-state");
  private final TextField name = new TextField();
  private final ListView<NamingWalk.Candidate> lamps = new ListView<>();
  private final Button assign = button("assign", this::assign);
  private final Button again;
  private final Button skip;
  private final Button back;
  private final Button fresh;
  private final Button done;

  NamingPane(NamingWalk walk) {
    this.walk = walk;
    this.again = button("again", walk::sameAgain);
    this.skip = button("skip", walk::skip);
    this.back = button("back", walk::back);
    this.fresh = button("new", walk::nameNew);
    this.done = button("done", walk::done);
    getStyleClass().add("link-pane");
    setId("walk");
    name.setId("walk-name");
    name.setPromptText(texts.get("walk.name"));
    name.setAccessibleText(texts.get("walk.name"));
    name.textProperty().addListener((of, before, now) -> list());
    name.addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    lamps.setId("walk-lamps");
    lamps.setAccessibleText(texts.get("walk.lamps"));
    lamps.setStyle("-fx-pref-height: " + ROWS_EM + "em;");
    lamps.setCellFactory(view -> new LampCell());
    lamps.addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    lamps.setOnMouseClicked(
        event -> {
          if (event.getClickCount() == 2) {
            assign();
          }
        });
    FlowPane buttons =
        new FlowPane(4, 4, assign, again, fresh, skip, back, done, button("cancel", walk::cancel));
    getChildren().setAll(step, name, buttons, lamps);
    walk.stepProperty().addListener((of, before, now) -> refresh());
    refresh();
  }

  private Button button(String key, Runnable run) {
    return PanelParts.button("walk-" + key, texts.get("walk." + key), run);
  }

  private void refresh() {
    Optional<NamingWalk.Step> now = walk.stepProperty().get();
    if (now.isEmpty()) {
      return;
    }
    boolean end = now.get().atEnd();
    Lines.show(
        step,
        end
            ? texts.get("walk.end", now.get().chain().id())
            : texts.get(
                "walk.step",
                Integer.toString(now.get().pixel()),
                Integer.toString(now.get().chain().pixels() - 1),
                now.get().chain().id()));
    name.setAccessibleHelp(step.getText());
    name.setDisable(end);
    lamps.setDisable(end);
    for (Button button : new Button[] {assign, skip, fresh}) {
      button.setDisable(end);
    }
    again.setDisable(end || now.get().pixel() == 0);
    back.setDisable(now.get().pixel() == 0);
    name.clear();
    list();
  }

  /**
   * Takes the focus if it is elsewhere: after a click in the drawing, what is typed is a name. By
   * Tab one stays on a button.
   */
  void takeFocus() {
    if (!Lines.hasFocus(this)) {
      (name.isDisabled() ? done : name).requestFocus();
    }
  }

  private void list() {
    lamps.getItems().setAll(walk.candidates(name.getText()));
    if (!lamps.getItems().isEmpty()) {
      lamps.getSelectionModel().select(0);
    }
  }

  private void assign() {
    NamingWalk.@Nullable Candidate selected = lamps.getSelectionModel().getSelectedItem();
    if (selected != null) {
      walk.name(selected.id());
    }
  }

  private void pressed(KeyEvent event) {
    boolean taken =
        switch (event.getCode()) {
          case ENTER -> {
            assign();
            yield true;
          }
          case ESCAPE -> {
            walk.cancel();
            yield true;
          }
          case DOWN -> event.getSource() == name && move(1);
          case UP -> event.getSource() == name && move(-1);
          default -> false;
        };
    if (taken) {
      event.consume();
    }
  }

  private boolean move(int by) {
    int count = lamps.getItems().size();
    if (count > 0) {
      int to = Math.floorMod(lamps.getSelectionModel().getSelectedIndex() + by, count);
      lamps.getSelectionModel().select(to);
      lamps.scrollTo(to);
    }
    return true;
  }

  private final class LampCell extends ListCell<NamingWalk.Candidate> {
    @Override
    protected void updateItem(NamingWalk.@Nullable Candidate lamp, boolean empty) {
      super.updateItem(lamp, empty);
      if (empty || lamp == null) {
        setText(null);
        return;
      }
      long given = walk.given(lamp.id());
      setText(
          given == 0 ? lamp.words() : texts.get("walk.given", lamp.words(), Long.toString(given)));
    }
  }
}
