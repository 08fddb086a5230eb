package lampwright.app.workshop.view.cue;

import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import lampwright.app.workshop.edit.NumberText;
import lampwright.app.workshop.model.ColourDropper;
import lampwright.app.workshop.model.cue.CueSettingsModel;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.app.workshop.view.form.FormContext;
import lampwright.app.workshop.view.form.FormView;
import lampwright.app.workshop.words.Texts;

/** The settings of the selected cues: what they do in words, and every value. */
public final class CueSettingsView extends VBox {
  private final Texts texts = Texts.of("cue");
  private final FormView form;

  /**
   * @param dropper takes colours from what is clicked
   * @param scene is shown while no cue is selected
   */
  public CueSettingsView(CueSettingsModel model, ColourDropper dropper, Node scene) {
    getStyleClass().add("cue-settings");
    setId("cue-settings");
    FormContext context = new FormContext();
    ColourFields.addTo(
        context,
        new ColourContext(
            () -> model.lamp().map(l -> PixelLook.of(model.bench().project().rig(), l)),
            model.usedColoursProperty(),
            dropper));
    form = new FormView(context, model.formProperty());
    Label summary = new Label();
    summary.textProperty().bind(model.summaryProperty());
    summary.getStyleClass().add("form-summary");
    summary.setWrapText(true);
    Label hint = new Label();
    hint.textProperty().bind(model.hintProperty());
    hint.getStyleClass().add("form-hint");
    hint.setWrapText(true);
    hint.setMinHeight(USE_PREF_SIZE);
    HBox.setHgrow(hint, Priority.ALWAYS);
    summary.setMinHeight(USE_PREF_SIZE);
    Button real = new Button();
    real.setId("like-real");
    real.setOnAction(event -> model.setLikeReal());
    Button phases = new Button(texts.get("phases"));
    phases.setId("share-phases");
    phases.setOnAction(event -> model.shareOutPhases());
    HBox second = new HBox(10, real, phases, hint);
    second.setAlignment(Pos.CENTER_LEFT);
    VBox line = new VBox(2, summary, second);
    line.getStyleClass().add("cue-head");
    StackPane middle = new StackPane(scene, form);
    VBox.setVgrow(middle, Priority.ALWAYS);
    getChildren().setAll(line, middle);
    Runnable show =
        () -> {
          boolean there = model.formProperty().get().isPresent();
          form.setVisible(there);
          scene.setVisible(!there);
          line.setVisible(there);
          line.setManaged(there);
          Optional<java.math.BigDecimal> rate = model.likeRealProperty().get();
          real.setVisible(rate.isPresent());
          real.setManaged(rate.isPresent());
          real.setText(rate.map(r -> texts.get("likeReal", NumberText.of(r))).orElse(""));
          boolean several = model.bench().selection().cues().size() > 1;
          phases.setVisible(several);
          phases.setManaged(several);
        };
    model.formProperty().addListener((of, before, now) -> show.run());
    model.likeRealProperty().addListener((of, before, now) -> show.run());
    model.bench().selectionProperty().addListener((of, before, now) -> show.run());
    show.run();
  }

  /** Gives the focus to the first value. */
  public void focusFirst() {
    form.focusFirst();
  }
}
