package lampwright.app.workshop.view.export;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import lampwright.app.export.ExportFormats;
import lampwright.app.workshop.model.export.ExportChoice;
import lampwright.app.workshop.model.export.ExportModel;
import lampwright.app.workshop.view.Stylesheets;
import lampwright.app.workshop.words.Texts;

/** Choosing at the left, what will be written at the right, the buttons below. */
public final class ExportPane extends BorderPane {
  private static final double MOST_FOR_CHOICES = 0.45;

  private final Texts texts = Texts.of("export");
  private final ExportModel model;
  private final Button write = new Button();

  /**
   * @param close closes the window that it stands in
   */
  public ExportPane(ExportModel model, Runnable close) {
    this.model = model;
    getStyleClass().add("export");
    getStylesheets().add(Stylesheets.url("export"));
    BooleanBinding writing =
        Bindings.createBooleanBinding(
            () -> model.stageProperty().get() instanceof ExportModel.Stage.Writing,
            model.stageProperty());
    Node choices = choices();
    choices.disableProperty().bind(writing);
    setLeft(choices);
    ScrollPane preview = new ScrollPane(new ExportPreviewPane(model, texts));
    preview.setFitToWidth(true);
    preview.getStyleClass().add("export-preview-scroll");
    preview.setAccessibleText(texts.get("places"));
    setCenter(preview);
    setBottom(new VBox(result(), buttons(writing, close)));
  }

  private Node choices() {
    VBox box =
        new VBox(
            head("scenes"),
            checks(model.scenes(), ExportChoice::key),
            head("formats"),
            checks(
                model.formats(),
                choice -> texts.get("format", choice.key(), ExportFormats.summary(choice.key()))),
            address(),
            head("folder"),
            folder());
    box.getStyleClass().add("export-choices");
    ScrollPane scroll = new ScrollPane(box);
    scroll.setFitToWidth(true);
    scroll.getStyleClass().add("export-choices-scroll");
    // However large the letters are, what will be written stays in sight.
    scroll.maxWidthProperty().bind(widthProperty().multiply(MOST_FOR_CHOICES));
    return scroll;
  }

  private Label head(String key) {
    Label label = new Label(texts.get(key));
    label.getStyleClass().add("export-head");
    return label;
  }

  private static Node checks(List<ExportChoice> choices, Function<ExportChoice, String> words) {
    VBox box = new VBox();
    box.getStyleClass().add("export-checks");
    for (ExportChoice choice : choices) {
      CheckBox check = new CheckBox(words.apply(choice));
      check.setMnemonicParsing(false);
      check.setWrapText(true);
      check.setId("export-" + choice.key());
      check.selectedProperty().bindBidirectional(choice.chosenProperty());
      box.getChildren().add(check);
    }
    return box;
  }

  private Node address() {
    TextField field = new TextField();
    field.textProperty().bindBidirectional(model.addressProperty());
    field.setPromptText(texts.get("address.hint"));
    field.setId("export-address");
    Label label = new Label(texts.get("address"));
    label.setLabelFor(field);
    HBox.setHgrow(field, Priority.ALWAYS);
    HBox row = new HBox(label, field);
    row.getStyleClass().add("export-row");
    model.formats().stream()
        .filter(choice -> choice.key().equals(ExportFormats.HEX))
        .findFirst()
        .ifPresent(
            hex -> {
              row.visibleProperty().bind(hex.chosenProperty());
              row.managedProperty().bind(hex.chosenProperty());
            });
    return row;
  }

  private Node folder() {
    Label place = new Label();
    place.setWrapText(true);
    place
        .textProperty()
        .bind(
            model
                .folderProperty()
                .map(folder -> folder.map(Path::toString).orElse(texts.get("folder.none"))));
    Button choose = new Button(texts.get("folder.choose"));
    choose.setId("export-folder");
    choose.setMinWidth(Region.USE_PREF_SIZE);
    choose
        .accessibleTextProperty()
        .bind(place.textProperty().map(text -> texts.get("folder") + ": " + text));
    choose.setOnAction(
        action -> {
          model.askFolder();
          // So that Enter writes, and does not ask again.
          if (model.readyBinding().get()) {
            write.requestFocus();
          }
        });
    HBox row = new HBox(choose, place);
    row.getStyleClass().add("export-row");
    return row;
  }

  private Node result() {
    Label label = new Label();
    label.setId("export-result");
    label.setWrapText(true);
    label.setFocusTraversable(true);
    label.textProperty().bind(model.stageProperty().map(this::resultText));
    label.visibleProperty().bind(label.textProperty().isNotEmpty());
    label.managedProperty().bind(label.visibleProperty());
    label.getStyleClass().add("export-result");
    return label;
  }

  private String resultText(ExportModel.Stage stage) {
    if (stage instanceof ExportModel.Stage.Done done) {
      String files = String.join("\n", done.written().stream().map(Path::toString).toList());
      return "✔ " + texts.get("done") + "\n" + files;
    } else if (stage instanceof ExportModel.Stage.Failed failed) {
      return "✖ " + texts.get("failed") + "\n" + failed.why();
    } else if (stage instanceof ExportModel.Stage.Writing writing) {
      return writing.what();
    }
    return "";
  }

  private Node buttons(BooleanBinding writing, Runnable close) {
    ProgressBar bar = new ProgressBar();
    bar.progressProperty().bind(model.progressProperty());
    bar.visibleProperty().bind(writing);
    bar.setAccessibleText(texts.get("progress"));
    bar.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(bar, Priority.ALWAYS);
    write.setText(texts.get("write"));
    write.setDefaultButton(true);
    write.setId("export-write");
    write.disableProperty().bind(model.readyBinding().not());
    write.setOnAction(action -> model.write());
    Button end = new Button();
    end.setId("export-end");
    end.textProperty().bind(writing.map(now -> texts.get(now ? "cancel" : "close")));
    end.setCancelButton(true);
    end.setOnAction(
        action -> {
          boolean stops = writing.get();
          model.cancel();
          if (!stops) {
            close.run();
          }
        });
    HBox row = new HBox(bar, write, end);
    row.getStyleClass().add("export-buttons");
    return row;
  }
}
