package lampwright.app.workshop.view.situation;

import java.util.Locale;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.model.situation.DriveModel;
import lampwright.app.workshop.model.situation.DriveRun;
import lampwright.app.workshop.view.PanelParts;
import lampwright.app.workshop.words.Texts;

/** A recorded drive: its file, play and pause, and its strip. */
public final class DriveView extends VBox {
  private final Texts texts = Texts.of("situations");
  private final DriveModel model;
  private final Label name = new Label();
  private final Label now = new Label();
  private final ToggleButton play = new ToggleButton();
  private final Button close = new Button();

  public DriveView(DriveModel model) {
    this.model = model;
    getStyleClass().add("drive");
    setId("drive");
    Button open = new Button(texts.get("drive.open"));
    open.setId("drive-open");
    open.setOnAction(event -> model.open());
    close.setText(texts.get("drive.close"));
    close.setId("drive-close");
    close.setOnAction(event -> model.close());
    play.setText(texts.get("drive.play"));
    play.setId("drive-play");
    play.setOnAction(event -> play(play.isSelected()));
    model.transmitter().playingProperty().addListener((of, before, after) -> refresh());
    model.transmitter().stateProperty().addListener((of, before, after) -> time());
    model.nameProperty().addListener((of, before, after) -> refresh());
    model.runProperty().addListener((of, before, after) -> refresh());
    now.setId("drive-now");
    name.getStyleClass().add("rung-when");
    name.setMinWidth(0);
    HBox bar = new HBox(open, close, play, now, name);
    bar.getStyleClass().add("drive-bar");
    ScrollPane strip = PanelParts.scrolling(new DriveStripView(model));
    VBox.setVgrow(strip, Priority.ALWAYS);
    getChildren().setAll(bar, strip);
    refresh();
  }

  private void play(boolean wanted) {
    if (wanted) {
      model.transmitter().onProperty().set(true);
    }
    model.transmitter().playingProperty().set(wanted);
    refresh();
  }

  private void refresh() {
    Optional<DriveRun> run = model.runProperty().get();
    close.setDisable(model.nameProperty().get().isEmpty());
    play.setDisable(run.isEmpty());
    play.setSelected(run.isPresent() && model.transmitter().playingProperty().get());
    name.setText(
        model
            .nameProperty()
            .get()
            .map(
                file ->
                    run.map(
                            r ->
                                texts.get(
                                    "drive.name",
                                    file,
                                    String.format(Locale.ROOT, "%.1f", r.frames() / r.rate()),
                                    Integer.toString(r.frames())))
                        .orElseGet(
                            () ->
                                texts.get(
                                    "drive.broken",
                                    model.transmitter().troubleProperty().get().orElse(""))))
            .orElseGet(() -> texts.get("drive.none")));
    time();
  }

  private void time() {
    now.setText(
        model
            .frame()
            .map(
                frame ->
                    texts.get(
                        "drive.now",
                        String.format(
                            Locale.ROOT,
                            "%.2f",
                            frame / model.runProperty().get().orElseThrow().rate()),
                        Integer.toString(frame)))
            .orElse(""));
  }
}
