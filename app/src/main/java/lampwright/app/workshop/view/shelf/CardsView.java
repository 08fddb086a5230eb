package lampwright.app.workshop.view.shelf;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.event.Event;
import javafx.geometry.Bounds;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.shelf.ShelfCard;
import lampwright.app.workshop.model.shelf.ShelfEntry;
import lampwright.app.workshop.model.shelf.ShelfModel;
import lampwright.app.workshop.words.Texts;

/** The cards of the shelf. One entry is reached by Tab, the others from there by arrow keys. */
final class CardsView extends ScrollPane {
  private static final double CARD = 330;
  private static final double GAP = 10;

  private final ShelfModel model;
  private final Runnable close;
  private final FlowPane cards = new FlowPane(GAP, GAP);
  private final Label nothing = new Label(Texts.of("shelf").get("nothing"));
  private List<EntryView> entries = List.of();

  /**
   * @param close leaves the shelf
   */
  CardsView(ShelfModel model, Runnable close) {
    this.model = model;
    this.close = close;
    setId("shelf-cards");
    getStyleClass().add("shelf-cards");
    setFitToWidth(true);
    setHbarPolicy(ScrollBarPolicy.NEVER);
    setFocusTraversable(false);
    nothing.getStyleClass().add("form-hint");
    setContent(cards);
    model.cardsProperty().addListener((of, before, now) -> fill());
    model.selectedProperty().addListener((of, before, now) -> choose());
    model.lights().countProperty().addListener((of, before, now) -> light());
    fill();
  }

  /** Shows an instant of all strips that move; below 0 nothing moves. */
  void frame(int frame) {
    for (EntryView entry : entries) {
      boolean moves = entry.wide() || entry.isHover() || entry.isFocused();
      entry.frame(moves ? frame : -1);
    }
  }

  /** Gives the focus to what is selected. */
  void focusSelected() {
    selected().ifPresent(Node::requestFocus);
  }

  private Optional<EntryView> selected() {
    return entries.stream()
        .filter(view -> model.selectedProperty().get().equals(Optional.of(view.entry())))
        .findFirst();
  }

  private void fill() {
    boolean focused = entries.stream().anyMatch(Node::isFocused);
    List<EntryView> made = new ArrayList<>();
    List<Node> nodes = new ArrayList<>();
    for (ShelfCard card : model.cardsProperty().get()) {
      nodes.add(node(card, made));
    }
    entries = made;
    cards.getChildren().setAll(nodes.isEmpty() ? List.of(nothing) : nodes);
    light();
    choose();
    if (focused) {
      focusSelected();
    }
  }

  private VBox node(ShelfCard card, List<EntryView> made) {
    Label title = new Label(card.title());
    title.getStyleClass().add("form-title");
    title.setMinWidth(USE_PREF_SIZE);
    Label hint = new Label(card.hint());
    hint.getStyleClass().add("field-range");
    // What a narrow card cuts is read in full here.
    hint.setTooltip(new Tooltip(card.hint()));
    Region between = new Region();
    HBox.setHgrow(between, Priority.ALWAYS);
    HBox head = new HBox(8, title, between, hint);
    head.setAlignment(Pos.BASELINE_LEFT);
    VBox node = new VBox(4, head);
    node.getStyleClass().add("shelf-card");
    card.pattern().ifPresent(entry -> node.getChildren().add(entry(entry, made)));
    if (!card.presets().isEmpty()) {
      FlowPane presets = new FlowPane(4, 2);
      presets.setPrefWrapLength(CARD - 20);
      card.presets().forEach(entry -> presets.getChildren().add(entry(entry, made)));
      node.getChildren().add(presets);
    }
    node.setPrefWidth(CARD);
    return node;
  }

  private EntryView entry(ShelfEntry entry, List<EntryView> made) {
    EntryView view = new EntryView(entry);
    view.setId("shelf-" + made.size());
    view.addEventHandler(MouseEvent.MOUSE_PRESSED, event -> pressed(view, event));
    view.setOnDragDetected(
        event -> {
          model.commands().carriedProperty().set(Optional.of(entry.placeable()));
          view.startFullDrag();
          event.consume();
        });
    view.addEventHandler(
        MouseEvent.MOUSE_RELEASED,
        event ->
            // Later, so that where it is let go has taken it by then.
            Platform.runLater(() -> model.commands().carriedProperty().set(Optional.empty())));
    view.addEventHandler(KeyEvent.KEY_PRESSED, this::key);
    made.add(view);
    return view;
  }

  private void pressed(EntryView view, MouseEvent event) {
    model.selectedProperty().set(Optional.of(view.entry()));
    view.requestFocus();
    if (event.getButton() == MouseButton.PRIMARY && event.getClickCount() == 2) {
      model.place();
    }
    event.consume();
  }

  private void key(KeyEvent event) {
    if (event.isShortcutDown() || event.isAltDown()) {
      return;
    }
    switch (event.getCode()) {
      case ENTER -> {
        if (event.isShiftDown()) {
          model.replace();
        } else {
          model.place();
        }
      }
      case ESCAPE -> {
        if (model.commands().carriedProperty().get().isPresent()) {
          model.commands().carriedProperty().set(Optional.empty());
        } else {
          close.run();
        }
      }
      case LEFT -> step(-1);
      case RIGHT -> step(1);
      case UP -> row(-1);
      case DOWN -> row(1);
      // The pane would scroll by it; what is around the pane has its own use for it.
      case SPACE -> Event.fireEvent(getParent(), event.copyFor(getParent(), getParent()));
      case HOME -> select(0);
      case END -> select(entries.size() - 1);
      default -> {
        return;
      }
    }
    event.consume();
  }

  private void step(int by) {
    select(selected().map(entries::indexOf).orElse(0) + by);
  }

  // To the nearest entry whose middle is above or below.
  private void row(int by) {
    Optional<EntryView> now = selected();
    if (now.isEmpty()) {
      select(0);
      return;
    }
    Bounds from = bounds(now.get());
    entries.stream()
        .filter(view -> by * (bounds(view).getCenterY() - from.getCenterY()) > 4)
        .min(
            Comparator.comparingDouble(
                view ->
                    Math.abs(bounds(view).getCenterY() - from.getCenterY())
                        + 2 * Math.abs(bounds(view).getMinX() - from.getMinX())))
        .ifPresent(view -> select(entries.indexOf(view)));
  }

  private Bounds bounds(Node view) {
    return cards.sceneToLocal(view.localToScene(view.getBoundsInLocal()));
  }

  private void select(int index) {
    if (index >= 0 && index < entries.size()) {
      model.selectedProperty().set(Optional.of(entries.get(index).entry()));
      entries.get(index).requestFocus();
    }
  }

  private void light() {
    entries.forEach(view -> view.show(model));
  }

  private void choose() {
    Optional<EntryView> chosen = selected();
    entries.forEach(view -> view.choose(chosen.isPresent() && chosen.get() == view));
    chosen.ifPresent(this::bringIntoSight);
  }

  private void bringIntoSight(EntryView view) {
    double all = cards.getHeight();
    double seen = getViewportBounds().getHeight();
    if (all <= seen || view.getScene() == null) {
      return;
    }
    Bounds at = bounds(view);
    double top = getVvalue() * (all - seen);
    double wanted = Math.min(Math.max(top, at.getMaxY() + GAP - seen), at.getMinY() - GAP);
    setVvalue(Math.max(0, Math.min(1, wanted / (all - seen))));
  }
}
