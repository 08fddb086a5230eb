package lampwright.app.workshop.view.start;

import java.nio.file.Path;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import lampwright.app.picture.LitFrame;
import lampwright.app.workshop.model.files.Leftover;
import lampwright.app.workshop.model.start.RecentFile;
import lampwright.app.workshop.model.start.StartModel;
import lampwright.app.workshop.view.EvenColumns;
import lampwright.app.workshop.words.Dates;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;

/** The right of the start sheet: work that was not saved, last files and samples. */
final class StartSide extends ScrollPane {
  private static final double SAMPLE_LEAST = 140;
  private static final double SAMPLE_MOST = 260;
  private static final double SAMPLE_ASPECT = 1.5;
  private static final double RECENT_WIDTH = 84;
  private static final double RECENT_HEIGHT = 56;
  private static final double GAP = 8;

  private final Texts texts = Texts.of("start");
  private final StartModel model;
  private final SheetInks inks;
  private final VBox recent = new VBox();
  private final EvenColumns samples = new EvenColumns(SAMPLE_LEAST, SAMPLE_MOST, GAP, 2);
  private final VBox left = new VBox();
  private final Dates dates = Dates.ofUser();

  StartSide(StartModel model, SheetInks inks) {
    this.model = model;
    this.inks = inks;
    getStyleClass().addAll("start-scroll", "start-side-scroll");
    setFitToWidth(true);
    setFocusTraversable(false);
    recent.getStyleClass().add("start-recent");
    left.getStyleClass().add("start-recent");
    Button open = new Button(texts.get("open"));
    open.setId("start-open");
    open.setOnAction(event -> model.open());
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    HBox head = new HBox(head(texts.get("recent")), space, open);
    head.getStyleClass().add("start-heading");
    VBox side = new VBox(left, head, recent, head(texts.get("samples")), samples);
    side.getStyleClass().add("start-side");
    setContent(side);
    model.recents().addListener((ListChangeListener<RecentFile>) change -> listRecent());
    model.leftovers().addListener((ListChangeListener<Leftover>) change -> listLeft());
    model.samples().addListener((ListChangeListener<LitFrame>) change -> listSamples());
    listRecent();
    listSamples();
    listLeft();
  }

  private void listRecent() {
    recent.getChildren().clear();
    if (model.recents().isEmpty()) {
      Label none = new Label(texts.get("recent.none"));
      none.getStyleClass().add("start-soft");
      recent.getChildren().add(none);
    }
    model.recents().forEach(this::addRecent);
  }

  private void addRecent(RecentFile recent) {
    Path file = recent.file();
    String name = name(file);
    String folder = SafeText.text(String.valueOf(file.getParent()), SafeText.MAX_MESSAGE);
    String when = recent.changed().map(dates::of).orElseGet(() -> texts.get("recent.gone"));
    LitPicture picture = new LitPicture(inks, RECENT_WIDTH, RECENT_HEIGHT, true, true);
    recent.light().ifPresentOrElse(picture::show, picture::showNothing);
    Label where = Card.soft(folder);
    where.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    VBox words = new VBox(Card.name(name), where, Card.soft(when));
    words.setAlignment(Pos.CENTER_LEFT);
    words.setMinWidth(0);
    Button button = new Button(String.join(", ", name, when, folder));
    button.setId("start-recent-" + this.recent.getChildren().size());
    button.getStyleClass().add("start-file");
    Card.face(button, new HBox(GAP, picture, words));
    button.setOnAction(event -> model.open(file));
    this.recent.getChildren().add(button);
  }

  private static String name(Path file) {
    return SafeText.text(String.valueOf(file.getFileName()), SafeText.MAX_MESSAGE)
        .replaceFirst("\\.lampwright\\.json$", "");
  }

  private void listLeft() {
    left.getChildren().clear();
    for (Leftover each : model.leftovers()) {
      String name = each.file().map(StartSide::name).orElseGet(() -> title(each.project().name()));
      Label what = Card.name(texts.get("left", name));
      Label when = Card.soft(texts.get("left.when", dates.of(each.written())));
      VBox words = new VBox(what, when);
      Button restore = new Button(texts.get("left.restore"));
      restore.setId("start-restore-" + left.getChildren().size());
      restore.setAccessibleText(texts.get("left.restore.of", name, when.getText()));
      restore.setOnAction(event -> model.recover(each));
      Button discard = new Button(texts.get("left.discard"));
      discard.setAccessibleText(texts.get("left.discard.of", name, when.getText()));
      discard.setOnAction(event -> model.discard(each));
      LitPicture picture = new LitPicture(inks, RECENT_WIDTH, RECENT_HEIGHT, true, true);
      LitFrame.of(each.project()).ifPresentOrElse(picture::show, picture::showNothing);
      HBox above = new HBox(GAP, picture, words);
      above.setAlignment(Pos.CENTER_LEFT);
      HBox buttons = new HBox(GAP, restore, discard);
      buttons.setAlignment(Pos.CENTER_RIGHT);
      VBox card = new VBox(GAP, above, buttons);
      card.getStyleClass().add("start-left");
      left.getChildren().add(card);
    }
  }

  private String title(String name) {
    return name.isBlank() ? texts.get("left.unnamed") : SafeText.text(name, SafeText.MAX_MESSAGE);
  }

  private void listSamples() {
    for (LitFrame sample : model.samples().subList(samples.getChildren().size(), count())) {
      LitPicture picture =
          new LitPicture(inks, SAMPLE_LEAST, SAMPLE_LEAST / SAMPLE_ASPECT, true, true);
      picture.show(sample);
      String name = SafeText.text(sample.project().name(), SafeText.MAX_MESSAGE);
      String more =
          texts.get(
              "sample", sample.project().rig().lamps().size(), sample.project().scenes().size());
      Button button = new Button(name + ", " + more);
      button.getStyleClass().add("start-sample");
      button.setId("start-sample-" + samples.getChildren().size());
      button.setTooltip(new Tooltip(name));
      Card.face(button, new VBox(picture, Card.wrapped(Card.name(name)), Card.soft(more)));
      Card.fill(button, picture, SAMPLE_ASPECT);
      button.setOnAction(event -> model.open(sample));
      samples.getChildren().add(button);
    }
  }

  private int count() {
    return model.samples().size();
  }

  private static Label head(String words) {
    Label head = new Label(words);
    head.getStyleClass().add("start-head");
    return head;
  }
}
