package lampwright.app.workshop.view.shelf;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.util.Duration;
import lampwright.app.workshop.model.shelf.ShelfEntry;
import lampwright.app.workshop.model.shelf.ShelfGroup;
import lampwright.app.workshop.model.shelf.ShelfLight;
import lampwright.app.workshop.model.shelf.ShelfModel;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.meter.FlashCaution;
import org.jspecify.annotations.Nullable;

/**
 * The patterns shelf: uses at the left, a search above, the cards, and the builder's own presets.
 */
public final class ShelfView extends BorderPane {
  private static final double STEP_MS = 40;
  private static final double ROW = 26;

  /** Left and right of the bar, in pixels. */
  private static final double EDGES = 20;

  private final Texts texts = Texts.of("shelf");
  private final ShelfModel model;
  private final Runnable close;
  private final CardsView cards;
  private final TextField search = new TextField();
  private final ListView<ShelfGroup> groups = new ListView<>();
  private final TextField name = new TextField();
  private final Timeline clock;
  private Map<ShelfGroup, Integer> counts = Map.of();
  private double timeMs;

  /**
   * @param close leaves the shelf
   */
  public ShelfView(ShelfModel model, Runnable close) {
    this.model = model;
    this.close = close;
    this.cards = new CardsView(model, close);
    setId("shelf");
    getStyleClass().add("shelf");
    clock = new Timeline(new KeyFrame(Duration.millis(STEP_MS), event -> tick()));
    clock.setCycleCount(Animation.INDEFINITE);
    setTop(top());
    setLeft(left());
    setCenter(cards);
    setBottom(bottom());
    model.motionProperty().addListener((of, before, now) -> run());
    sceneProperty().addListener((of, before, now) -> run());
    parentProperty().addListener((of, before, now) -> parent(now));
    addEventHandler(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ESCAPE) {
            close.run();
            event.consume();
          }
        });
  }

  /** Gives the focus to the search. */
  public void focusSearch() {
    search.requestFocus();
    search.selectAll();
  }

  /** Whether strips move now. */
  public boolean isMoving() {
    return clock.getStatus() == Animation.Status.RUNNING;
  }

  // A tab that is not shown makes the parent of its content invisible.
  private void parent(@Nullable Parent parent) {
    if (parent != null) {
      parent.visibleProperty().addListener((of, before, now) -> run());
    }
    run();
  }

  private void run() {
    boolean seen = getScene() != null && getParent() != null && getParent().isVisible();
    if (seen) {
      model.lookAt();
    }
    if (seen && model.motionProperty().get()) {
      clock.play();
    } else {
      clock.stop();
      cards.frame(-1);
    }
  }

  private void tick() {
    timeMs = (timeMs + STEP_MS) % ShelfLight.LENGTH_MS;
    cards.frame((int) (timeMs * ShelfLight.FRAMES / ShelfLight.LENGTH_MS));
  }

  private FlowPane top() {
    search.setId("shelf-search");
    search.setPromptText(texts.get("search"));
    search.setAccessibleText(texts.get("search.accessible"));
    search.setPrefColumnCount(24);
    search.textProperty().bindBidirectional(model.queryProperty());
    search.addEventFilter(KeyEvent.KEY_PRESSED, this::searchKey);
    Label count = new Label();
    count.getStyleClass().add("field-range");
    Label hint = new Label();
    hint.getStyleClass().add("field-range");
    hint.setId("shelf-hint");
    hint.textProperty().bind(model.hintProperty());
    CheckBox motion = new CheckBox(texts.get("motion"));
    motion.setId("shelf-motion");
    motion.setTooltip(
        new Tooltip(texts.get("motion.hint", Integer.toString(FlashCaution.MOST_FLASHES))));
    motion.selectedProperty().bindBidirectional(model.motionProperty());
    Runnable counted =
        () -> {
          List<ShelfEntry> all = model.entries();
          long patterns = all.stream().filter(e -> e.source() == ShelfEntry.Source.PATTERN).count();
          count.setText(texts.get("counts", patterns, all.size() - patterns));
        };
    model.cardsProperty().addListener((of, before, now) -> counted.run());
    counted.run();
    // In a narrow window the hint goes below, and takes as many lines as it needs.
    FlowPane top = new FlowPane(10, 4, search, count, motion, hint);
    top.setRowValignment(VPos.CENTER);
    hint.setWrapText(true);
    hint.maxWidthProperty().bind(top.widthProperty().subtract(EDGES));
    top.getStyleClass().add("shelf-bar");
    return top;
  }

  private void searchKey(KeyEvent event) {
    if (event.getCode() == KeyCode.DOWN) {
      cards.focusSelected();
    } else if (event.getCode() == KeyCode.ENTER) {
      if (event.isShiftDown()) {
        model.replace();
      } else {
        model.place();
      }
    } else if (event.getCode() == KeyCode.ESCAPE) {
      if (search.getText().isEmpty()) {
        close.run();
      } else {
        search.clear();
      }
    } else {
      return;
    }
    event.consume();
  }

  private ListView<ShelfGroup> left() {
    groups.setId("shelf-uses");
    groups.setAccessibleText(texts.get("uses"));
    groups.setPrefWidth(150);
    groups.setFixedCellSize(ROW);
    groups.setCellFactory(list -> new GroupCell());
    groups.getItems().setAll(ShelfModel.groups());
    groups.getSelectionModel().select(model.groupProperty().get());
    groups
        .getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (of, before, now) -> model.groupProperty().set(now == null ? ShelfGroup.ALL : now));
    Runnable count =
        () -> {
          counts = model.counts();
          groups.refresh();
        };
    model.cardsProperty().addListener((of, before, now) -> count.run());
    count.run();
    return groups;
  }

  private HBox bottom() {
    name.setId("shelf-name");
    name.setPromptText(texts.get("name"));
    name.setAccessibleText(texts.get("name.accessible"));
    MenuButton save = new MenuButton(texts.get("save"));
    save.setId("shelf-save");
    save.getItems()
        .setAll(
            item("save.project", () -> model.saveInProject(named())),
            item("save.all", () -> model.saveForAll(named())));
    save.disableProperty().bind(model.commands().anyCueProperty().not());
    Button rename = button("rename", () -> model.rename(name.getText()));
    Button delete = button("delete", model::delete);
    rename.disableProperty().bind(model.ownSelectedProperty().not());
    delete.disableProperty().bind(model.ownSelectedProperty().not());
    model
        .selectedProperty()
        .addListener(
            (of, before, now) ->
                now.filter(ShelfEntry::own).ifPresent(e -> name.setText(e.name())));
    Label trouble = new Label();
    trouble.getStyleClass().add("field-trouble");
    trouble.setId("shelf-trouble");
    Runnable tell =
        () -> {
          String text = model.troubleProperty().get();
          trouble.setText(text.isEmpty() ? "" : texts.get("trouble", text));
        };
    model.troubleProperty().addListener((of, before, now) -> tell.run());
    tell.run();
    Label strips = new Label(texts.get("strips"));
    strips.getStyleClass().add("field-range");
    Region between = new Region();
    HBox.setHgrow(between, Priority.ALWAYS);
    HBox bottom = new HBox(8, name, save, rename, delete, trouble, between, strips);
    bottom.setAlignment(Pos.CENTER_LEFT);
    bottom.getStyleClass().add("shelf-bar");
    return bottom;
  }

  private String named() {
    return Optional.of(name.getText()).filter(t -> !t.isBlank()).orElseGet(model::suggestedName);
  }

  private MenuItem item(String key, Runnable run) {
    MenuItem item = new MenuItem(texts.get(key));
    item.setId("shelf-" + key.replace('.', '-'));
    item.setOnAction(event -> run.run());
    return item;
  }

  private Button button(String key, Runnable run) {
    Button button = new Button(texts.get(key));
    button.setId("shelf-" + key);
    button.setOnAction(event -> run.run());
    return button;
  }

  /** The name of a group, and how many entries it has. */
  private final class GroupCell extends ListCell<ShelfGroup> {
    @Override
    protected void updateItem(@Nullable ShelfGroup group, boolean empty) {
      super.updateItem(group, empty);
      if (group == null || empty) {
        setText(null);
        setGraphic(null);
        return;
      }
      String words = texts.get("use." + group.key());
      String count = Integer.toString(counts.getOrDefault(group, 0));
      Label number = new Label(count);
      number.getStyleClass().add("field-range");
      Region between = new Region();
      HBox.setHgrow(between, Priority.ALWAYS);
      Region notch = new Region();
      notch.getStyleClass().add("shelf-notch");
      notch.visibleProperty().bind(selectedProperty());
      HBox row = new HBox(4, notch, new Label(words), between, number);
      row.setAlignment(Pos.CENTER_LEFT);
      setGraphic(row);
      setAccessibleText(texts.get("use.accessible", words, count));
    }
  }
}
