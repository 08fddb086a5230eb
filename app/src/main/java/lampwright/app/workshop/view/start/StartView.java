package lampwright.app.workshop.view.start;

import java.util.List;
import java.util.function.Function;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.TilePane;
import javafx.scene.layout.VBox;
import lampwright.app.outline.Models;
import lampwright.app.workshop.model.start.StartModel;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.ModelKind;
import lampwright.engine.rig.Controller;

/**
 * The start sheet: kind of model, lamps and controller at the left, files and samples at the right.
 */
public final class StartView extends BorderPane {
  private static final double CARD_WIDTH = 122;
  private static final double CARD_HEIGHT = 66;
  private static final double PICTURE_WIDTH = 300;
  private static final double PICTURE_HEIGHT = 172;

  private final Texts texts = Texts.of("start");
  private final StartModel model;
  private final ToggleGroup kinds = new ToggleGroup();
  private final ToggleGroup controllers = new ToggleGroup();

  /**
   * @param mark the program's mark and name
   */
  public StartView(StartModel model, List<Node> mark) {
    this.model = model;
    setId("start");
    getStyleClass().add("start");
    setTop(header(mark));
    VBox sheet =
        new VBox(
            head("1", texts.get("model")),
            kinds(),
            new HBox(lamps(), picture()),
            head("3", texts.get("controller")),
            controllers());
    sheet.getChildren().get(2).getStyleClass().add("start-lamps-row");
    sheet.getStyleClass().add("start-sheet");
    ScrollPane scroll = new ScrollPane(sheet);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.getStyleClass().add("start-scroll");
    BorderPane left = new BorderPane(scroll);
    // In sight however long the list is.
    left.setBottom(new StartTitleBlock(model));
    setCenter(left);
    setRight(new StartSide(model));
    // Before a control takes it: Esc leaves the sheet and Enter makes it, wherever the focus is.
    addEventFilter(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ESCAPE) {
            event.consume();
            model.skip();
          } else if (event.getCode() == KeyCode.ENTER
              && !(getScene().getFocusOwner() instanceof Button)) {
            // A card or a number would take it for itself.
            event.consume();
            model.make();
          }
        });
  }

  /** Gives the selected kind of model the focus. */
  public void focusFirst() {
    if (kinds.getSelectedToggle() instanceof Node node) {
      node.requestFocus();
    }
  }

  private HBox header(List<Node> mark) {
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    Label skip = new Label(texts.get("skip"));
    skip.getStyleClass().add("start-soft");
    HBox header = new HBox();
    header.getChildren().setAll(mark);
    header.getChildren().addAll(space, skip);
    header.getStyleClass().add("header");
    return header;
  }

  private static HBox head(String number, String words) {
    Label sign = new Label(number);
    sign.getStyleClass().add("start-number");
    Label title = new Label(words);
    title.getStyleClass().add("start-head");
    HBox head = new HBox(sign, title);
    head.getStyleClass().add("start-heading");
    return head;
  }

  private TilePane kinds() {
    TilePane cards = cards();
    for (ModelKind kind : ModelKind.values()) {
      LitPicture picture = new LitPicture(CARD_WIDTH, CARD_HEIGHT, false, false);
      picture.show(kind);
      ToggleButton card = card(kinds, Models.title(kind), picture, "start-kind-" + kind.key());
      card.setSelected(kind == model.request().kind());
      cards.getChildren().add(card);
      card.selectedProperty()
          .addListener(
              (of, before, now) -> {
                if (now) {
                  model.choose(kind);
                }
              });
    }
    keep(kinds);
    return cards;
  }

  private TilePane controllers() {
    TilePane cards = cards();
    for (Controller controller : Controller.all()) {
      Label words = new Label(model.words(controller) + "\n" + model.way(controller));
      words.getStyleClass().add("start-soft");
      ToggleButton card =
          card(controllers, controller.name(), words, "start-controller-" + controller.id());
      card.setAccessibleText(controller.name() + ", " + words.getText());
      card.setSelected(controller.equals(model.request().controller()));
      cards.getChildren().add(card);
      card.selectedProperty()
          .addListener(
              (of, before, now) -> {
                if (now) {
                  model.choose(controller);
                }
              });
    }
    keep(controllers);
    return cards;
  }

  private static TilePane cards() {
    TilePane cards = new TilePane();
    cards.getStyleClass().add("start-cards");
    cards.setTileAlignment(Pos.TOP_LEFT);
    return cards;
  }

  private static ToggleButton card(ToggleGroup group, String words, Node picture, String id) {
    ToggleButton card = new ToggleButton(words, picture);
    card.setId(id);
    card.setToggleGroup(group);
    card.setMaxWidth(Double.MAX_VALUE);
    card.getStyleClass().add("start-card");
    return card;
  }

  // A second press on the selected card must not take the choice back.
  private static void keep(ToggleGroup group) {
    group
        .selectedToggleProperty()
        .addListener(
            (of, before, now) -> {
              if (now == null && before != null) {
                before.setSelected(true);
              }
            });
  }

  private VBox lamps() {
    Label usual = new Label();
    usual.getStyleClass().add("start-soft");
    HBox head = head("2", texts.get("lamps"));
    head.getChildren().add(usual);
    LampChecklist list = new LampChecklist(model);
    Function<ModelKind, String> words = kind -> texts.get("lamps.usual", Models.title(kind));
    usual.setText(words.apply(model.request().kind()));
    model
        .requestProperty()
        .addListener((of, before, now) -> usual.setText(words.apply(now.kind())));
    VBox lamps = new VBox(head, list);
    HBox.setHgrow(lamps, Priority.ALWAYS);
    return lamps;
  }

  private LitPicture picture() {
    LitPicture picture = new LitPicture(PICTURE_WIDTH, PICTURE_HEIGHT, true, false);
    picture.setAccessibleText(texts.get("picture"));
    Runnable refresh =
        () ->
            model
                .outcomeProperty()
                .get()
                .flatMap(StartModel.Outcome::light)
                .ifPresentOrElse(picture::show, () -> picture.show(model.request().kind()));
    model.outcomeProperty().addListener((of, before, now) -> refresh.run());
    refresh.run();
    return picture;
  }
}
