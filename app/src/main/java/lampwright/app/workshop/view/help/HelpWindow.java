package lampwright.app.workshop.view.help;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.collections.ObservableList;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.stage.Stage;
import javafx.stage.Window;
import lampwright.app.help.Manual;
import lampwright.app.help.Manual.Place;
import lampwright.app.workshop.model.command.KeyTable;
import lampwright.app.workshop.words.Texts;
import org.jspecify.annotations.Nullable;

/**
 * A window of its own beside the workshop's: the table of keys and the pages of the manual. One at
 * a time; asked again, it comes to the front.
 */
public final class HelpWindow {
  /** The entry of the table of keys in the list of pages. */
  public static final String KEYS = "keys";

  private static final double WIDTH = 980;
  private static final double HEIGHT = 720;

  private final Texts texts = Texts.of("help");
  private final Supplier<KeyTable> keys;
  private final ObservableList<String> stylesheets;
  private final Deque<Place> before = new ArrayDeque<>();
  private final ListView<String> pages = new ListView<>();
  private final Button back = new Button(texts.get("back"));
  private final BorderPane content = new BorderPane();
  private @Nullable Stage stage;
  private @Nullable Place shown;
  private boolean listing;

  /**
   * @param keys the table of keys as it is now
   * @param stylesheets those of the window
   */
  public HelpWindow(Supplier<KeyTable> keys, ObservableList<String> stylesheets) {
    this.keys = keys;
    this.stylesheets = stylesheets;
    List<String> ids = new ArrayList<>(List.of(KEYS));
    ids.addAll(Manual.pages());
    pages.setId("help-pages");
    pages.getItems().setAll(ids);
    pages.setAccessibleText(texts.get("pages"));
    pages.setPrefWidth(220);
    pages.setCellFactory(
        list ->
            new ListCell<>() {
              @Override
              protected void updateItem(@Nullable String id, boolean empty) {
                super.updateItem(id, empty);
                setText(id == null || empty ? "" : texts.get("page." + id));
              }
            });
    pages
        .getSelectionModel()
        .selectedItemProperty()
        .addListener(
            (of, was, now) -> {
              if (now != null && !listing) {
                go(new Place(now, ""));
              }
            });
    back.setId("help-back");
    back.setOnAction(event -> back());
    back.setDisable(true);
    content.setId("help");
    content.getStyleClass().add("help");
    content.setTop(back);
    content.setLeft(pages);
  }

  /**
   * Shows a page.
   *
   * @param page its id, or {@link #KEYS}
   * @param anchor a heading or a code in a table of it; empty for its beginning
   */
  public void show(Window owner, String page, String anchor) {
    Stage window = stage == null ? open(owner) : stage;
    go(new Place(page, anchor));
    window.show();
    window.toFront();
    if (content.getCenter() instanceof KeysView view) {
      view.focusFirst();
    } else if (content.getCenter() != null) {
      content.getCenter().requestFocus();
    }
  }

  private Stage open(Window owner) {
    Stage window = new Stage();
    window.initOwner(owner);
    window.setTitle(texts.get("title"));
    if (owner instanceof Stage main) {
      window.getIcons().setAll(main.getIcons());
    }
    Scene scene = new Scene(content, WIDTH, HEIGHT);
    Bindings.bindContent(scene.getStylesheets(), stylesheets);
    content.setStyle(owner.getScene().getRoot().getStyle());
    // Before the lists, which take Escape for their own.
    scene.addEventFilter(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ESCAPE) {
            window.hide();
          } else if (event.getCode() == KeyCode.LEFT && event.isAltDown()) {
            back();
          }
        });
    window.setScene(scene);
    stage = window;
    return window;
  }

  private void back() {
    if (!before.isEmpty()) {
      Place to = before.pop();
      shown = null;
      go(to);
    }
  }

  private void go(Place to) {
    if (to.equals(shown)) {
      return;
    }
    if (shown != null) {
      before.push(shown);
    }
    shown = to;
    back.setDisable(before.isEmpty());
    listing = true;
    pages.getSelectionModel().select(to.page());
    listing = false;
    if (to.page().equals(KEYS)) {
      content.setCenter(new KeysView(keys.get()));
      return;
    }
    PageView page = new PageView(Manual.page(to.page()), this::go);
    ScrollPane scroll = new ScrollPane(page);
    scroll.setId("help-page");
    scroll.setFitToWidth(true);
    scroll.setAccessibleText(texts.get("page." + to.page()));
    content.setCenter(scroll);
    page.at(to.anchor()).ifPresent(node -> Platform.runLater(() -> scrollTo(scroll, page, node)));
  }

  private static void scrollTo(ScrollPane scroll, PageView page, Node node) {
    scroll.applyCss();
    scroll.layout();
    node.getStyleClass().add("help-found");
    Bounds bounds = page.sceneToLocal(node.localToScene(node.getBoundsInLocal()));
    double room = page.getHeight() - scroll.getViewportBounds().getHeight();
    if (room > 0) {
      scroll.setVvalue(Math.max(0, Math.min(1, (bounds.getMinY() - 20) / room)));
    }
  }
}
