package lampwright.app.workshop.view.help;

import java.util.List;
import java.util.Optional;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.words.Texts;
import org.jspecify.annotations.Nullable;

/**
 * A layer over the window that shows its parts one after another: a frame around the part, and a
 * card that says what it is for. The window can be used meanwhile.
 */
public final class Tour extends Pane {
  private static final double ROOM = 16;

  /**
   * One stop.
   *
   * @param key of its words
   * @param part what is shown
   */
  public record Stop(String key, Node part) {}

  private final Texts texts = Texts.of("help");
  private final List<Stop> stops;
  private final Region frame = new Region();
  private final Label title = new Label();
  private final Label words = new Label();
  private final Button back = new Button(texts.get("tour.back"));
  private final Button next = new Button();
  private final Button leave = new Button(texts.get("tour.leave"));
  private final VBox card = new VBox();
  private Optional<Node> focusBefore = Optional.empty();
  private int at;

  /**
   * @param stops in order, at least one
   */
  public Tour(List<Stop> stops) {
    this.stops = List.copyOf(stops);
    setId("tour");
    setPickOnBounds(false);
    setVisible(false);
    frame.getStyleClass().add("tour-frame");
    frame.setMouseTransparent(true);
    card.getStyleClass().add("tour-card");
    card.setId("tour-card");
    title.getStyleClass().add("tour-title");
    title.setId("tour-title");
    words.setWrapText(true);
    words.setMinHeight(Region.USE_PREF_SIZE);
    back.setId("tour-back");
    back.setOnAction(event -> go(at - 1));
    next.setId("tour-next");
    next.setDefaultButton(true);
    next.setOnAction(event -> go(at + 1));
    leave.setId("tour-leave");
    leave.setOnAction(event -> end());
    card.getChildren().setAll(title, words, new HBox(8, back, next, leave));
    card.addEventHandler(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ESCAPE) {
            end();
            event.consume();
          }
        });
    getChildren().setAll(frame, card);
  }

  /** Begins at the first stop. */
  public void begin() {
    if (!isVisible()) {
      focusBefore = Optional.ofNullable(getScene().getFocusOwner());
    }
    setVisible(true);
    go(0);
  }

  private void go(int stop) {
    if (stop >= stops.size()) {
      end();
      return;
    }
    at = stop;
    String key = "tour." + stops.get(at).key();
    title.setText(
        texts.get(
            "tour.step",
            Integer.toString(at + 1),
            Integer.toString(stops.size()),
            texts.get(key + ".title")));
    words.setText(texts.get(key));
    back.setDisable(at == 0);
    next.setText(texts.get(at == stops.size() - 1 ? "tour.end" : "tour.next"));
    next.setAccessibleText(title.getText() + ". " + words.getText() + " " + next.getText());
    next.requestFocus();
    requestLayout();
  }

  private void end() {
    setVisible(false);
    focusBefore.ifPresent(Node::requestFocus);
  }

  @Override
  protected void layoutChildren() {
    if (!isVisible()) {
      return;
    }
    @Nullable Bounds part = inLayer(stops.get(at).part());
    if (part == null) {
      return;
    }
    frame.resizeRelocate(part.getMinX(), part.getMinY(), part.getWidth(), part.getHeight());
    double width = Math.min(card.prefWidth(-1), getWidth() - 2 * ROOM);
    double height = card.prefHeight(width);
    card.resizeRelocate(
        within(part.getCenterX() - width / 2, getWidth() - width),
        within(
            part.getMaxY() + ROOM + height <= getHeight()
                ? part.getMaxY() + ROOM
                : part.getMinY() - ROOM - height >= 0
                    ? part.getMinY() - ROOM - height
                    : part.getCenterY() - height / 2,
            getHeight() - height),
        width,
        height);
  }

  private static double within(double wanted, double most) {
    return Math.max(ROOM, Math.min(most - ROOM, wanted));
  }

  private @Nullable Bounds inLayer(Node part) {
    return part.getScene() == getScene()
        ? sceneToLocal(part.localToScene(part.getLayoutBounds()))
        : null;
  }
}
