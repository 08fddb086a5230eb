package lampwright.app.workshop.view.start;

import java.nio.file.Path;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.TilePane;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.start.LitFrame;
import lampwright.app.workshop.model.start.StartModel;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.check.SafeText;

/** The right of the start sheet: last files and samples. */
final class StartSide extends ScrollPane {
  private static final double PICTURE_WIDTH = 140;
  private static final double PICTURE_HEIGHT = 96;
  private static final double EDGE = 6;
  private static final int MOST_RECENT = 5;

  private final Texts texts = Texts.of("start");
  private final StartModel model;
  private final VBox recent = new VBox();
  private final TilePane samples = new TilePane();

  StartSide(StartModel model) {
    this.model = model;
    getStyleClass().addAll("start-scroll", "start-side-scroll");
    setFitToWidth(true);
    setFocusTraversable(false);
    recent.getStyleClass().add("start-recent");
    samples.getStyleClass().add("start-samples");
    samples.setPrefColumns(2);
    Button open = new Button(texts.get("open"));
    open.setId("start-open");
    open.setOnAction(event -> model.open());
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    HBox head = new HBox(head(texts.get("recent")), space, open);
    head.getStyleClass().add("start-heading");
    VBox side = new VBox(head, recent, head(texts.get("samples")), samples);
    side.getStyleClass().add("start-side");
    setContent(side);
    model.recents().addListener((ListChangeListener<Path>) change -> listRecent());
    model.samples().addListener((ListChangeListener<LitFrame>) change -> listSamples());
    listRecent();
    listSamples();
  }

  private void listRecent() {
    recent.getChildren().clear();
    if (model.recents().isEmpty()) {
      Label none = new Label(texts.get("recent.none"));
      none.getStyleClass().add("start-soft");
      recent.getChildren().add(none);
    }
    model.recents().stream().limit(MOST_RECENT).forEach(this::addRecent);
  }

  private void addRecent(Path file) {
    String name = SafeText.text(String.valueOf(file.getFileName()), SafeText.MAX_MESSAGE);
    String folder = SafeText.text(String.valueOf(file.getParent()), SafeText.MAX_MESSAGE);
    Button button = new Button(name.replaceFirst("\\.lampwright\\.json$", "") + "\n" + folder);
    button.setMnemonicParsing(false);
    button.setMaxWidth(Double.MAX_VALUE);
    button.getStyleClass().add("start-file");
    button.setOnAction(event -> model.open(file));
    recent.getChildren().add(button);
  }

  private void listSamples() {
    for (LitFrame sample : model.samples().subList(samples.getChildren().size(), count())) {
      LitPicture picture = new LitPicture(PICTURE_WIDTH, PICTURE_HEIGHT, true, true);
      picture.show(sample);
      String name = SafeText.text(sample.project().name(), SafeText.MAX_MESSAGE);
      String more =
          texts.get(
              "sample", sample.project().rig().lamps().size(), sample.project().scenes().size());
      Button button = new Button(name + "\n" + more, picture);
      button.setMnemonicParsing(false);
      button.setWrapText(true);
      button.setPrefWidth(PICTURE_WIDTH + 2 * EDGE);
      button.setContentDisplay(ContentDisplay.TOP);
      button.getStyleClass().add("start-sample");
      button.setId("start-sample-" + samples.getChildren().size());
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
