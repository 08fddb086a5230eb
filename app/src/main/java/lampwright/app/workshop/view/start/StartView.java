package lampwright.app.workshop.view.start;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.image.Image;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.shape.SVGPath;
import lampwright.app.outline.Models;
import lampwright.app.workshop.model.start.StartModel;
import lampwright.app.workshop.view.EvenColumns;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.document.ModelKind;
import lampwright.engine.rig.Controller;

/**
 * The start sheet: kind of model, lamps and controller at the left, files and samples at the right.
 */
public final class StartView extends BorderPane {
  private static final double CARD_WIDTH = 106;
  private static final double CARD_MOST = 300;
  private static final int KIND_COLUMNS = 6;
  private static final double CARD_ASPECT = 1.9;
  private static final double CONTROLLER_WIDTH = 205;
  private static final double GAP = 8;
  private static final double PICTURE_LEAST = 150;
  private static final double PICTURE_ASPECT = 1.74;
  private static final int PHOTO_PIXELS = 800;
  private static final double PICTURE_MOST = 760;
  private static final double PICTURE_SHARE = 0.44;

  private final Texts texts = Texts.of("start");
  private final StartModel model;
  private final SheetInks inks = new SheetInks();
  private final ToggleGroup kinds = new ToggleGroup();
  private final ToggleGroup controllers = new ToggleGroup();
  private final ReadOnlyObjectWrapper<Optional<Image>> photo =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  /**
   * @param mark the program's mark and name
   */
  public StartView(StartModel model, List<Node> mark) {
    this.model = model;
    setId("start");
    model.ownPictureProperty().addListener((of, before, now) -> load(now));
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
    getChildren().add(inks);
    setRight(new StartSide(model, inks));
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

  private void load(Optional<Path> file) {
    if (file.isEmpty()) {
      photo.set(Optional.empty());
      return;
    }
    Image image =
        new Image(file.get().toUri().toString(), PHOTO_PIXELS, PHOTO_PIXELS, true, true, true);
    image
        .progressProperty()
        .addListener(
            (of, before, now) -> {
              if (now.doubleValue() >= 1 && !image.isError()) {
                photo.set(Optional.of(image));
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

  private EvenColumns kinds() {
    EvenColumns cards = new EvenColumns(CARD_WIDTH, CARD_MOST, GAP, KIND_COLUMNS);
    for (ModelKind kind : ModelKind.values()) {
      LitPicture picture = new LitPicture(inks, CARD_WIDTH, CARD_WIDTH / CARD_ASPECT, false, false);
      picture.show(kind);
      String title = Models.title(kind);
      ToggleButton card =
          card(title, new VBox(2, Card.name(title), picture), "start-kind-" + kind.key());
      Card.fill(card, picture, CARD_ASPECT);
      card.setToggleGroup(kinds);
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
    cards.getChildren().add(ownPicture());
    keep(kinds);
    return cards;
  }

  private ToggleButton ownPicture() {
    LitPicture picture = new LitPicture(inks, CARD_WIDTH, CARD_WIDTH / CARD_ASPECT, false, false);
    SVGPath frame = new SVGPath();
    frame.setContent(
        "M1 1 H47 V31 H1 Z M1 26 L15 12 L25 22 L32 15 L47 29 M33 9 a3 3 0 1 0 6 0 a3 3 0 1 0 -6 0");
    frame.getStyleClass().add("own-picture-sign");
    String title = texts.get("own");
    ToggleButton card =
        card(title, new VBox(2, Card.name(title), new StackPane(picture, frame)), "start-own");
    card.getStyleClass().add("start-own");
    card.setAccessibleHelp(texts.get("own.more"));
    card.setTooltip(new Tooltip(texts.get("own.more")));
    Card.fill(card, picture, CARD_ASPECT);
    // What is on it follows from whether there is a picture, not from the press.
    card.setOnAction(
        event -> {
          boolean there = model.ownPictureProperty().get().isPresent();
          card.setSelected(there);
          if (there) {
            model.dropOwnPicture();
          } else {
            model.chooseOwnPicture();
          }
        });
    photo.addListener(
        (of, before, now) -> {
          frame.setVisible(now.isEmpty());
          picture.setVisible(now.isPresent());
          picture.photograph(now);
          card.setSelected(now.isPresent());
        });
    picture.setVisible(false);
    return card;
  }

  private EvenColumns controllers() {
    EvenColumns cards = new EvenColumns(CONTROLLER_WIDTH, CARD_MOST, GAP, Controller.all().size());
    for (Controller controller : Controller.all()) {
      String what = model.words(controller);
      String way = model.way(controller);
      Region space = new Region();
      HBox.setHgrow(space, Priority.ALWAYS);
      HBox face =
          new HBox(
              new VBox(Card.name(controller.name()), Card.soft(what), Card.soft(way)),
              space,
              new ControllerPicture(controller));
      face.setAlignment(Pos.CENTER_LEFT);
      ToggleButton card = card(controller.name(), face, "start-controller-" + controller.id());
      card.setToggleGroup(controllers);
      card.setAccessibleText(controller.name() + ", " + what + ", " + way);
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

  private static ToggleButton card(String words, Region face, String id) {
    ToggleButton card = new ToggleButton(words);
    card.setId(id);
    Card.face(card, face);
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
    lamps.setMinWidth(Region.USE_PREF_SIZE);
    return lamps;
  }

  private StackPane picture() {
    LitPicture picture =
        new LitPicture(inks, PICTURE_LEAST, PICTURE_LEAST / PICTURE_ASPECT, true, false);
    photo.addListener((of, before, now) -> picture.photograph(now));
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
    StackPane room = new StackPane(picture);
    room.setAlignment(Pos.TOP_RIGHT);
    room.setMinWidth(0);
    room.widthProperty()
        .addListener(
            (of, before, now) -> {
              // No higher than what leaves the rest of the sheet in sight.
              double most = Math.min(PICTURE_MOST, PICTURE_SHARE * getHeight());
              double width = Math.max(PICTURE_LEAST, Math.min(most, Math.floor(now.doubleValue())));
              picture.size(width, Math.rint(width / PICTURE_ASPECT));
            });
    HBox.setHgrow(room, Priority.ALWAYS);
    return room;
  }
}
