package lampwright.app.workshop.view;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import lampwright.app.workshop.edit.NumberText;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.model.rig.RigCommands;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.scene.Scene;

/** Above the ribbons: which scene is on the bench, and what edges are drawn to. */
final class SceneBar extends FlowPane {
  private static final BigDecimal MINUTE_MS = BigDecimal.valueOf(60_000);

  private boolean shows;

  SceneBar(Bench bench, RibbonsModel ribbons, RigCommands rig, Runnable offerKinds) {
    Texts texts = Texts.of("workshop");
    getStyleClass().add("drawing-bar");
    setHgap(8);
    setVgap(4);
    setRowValignment(javafx.geometry.VPos.CENTER);
    setAlignment(Pos.CENTER_LEFT);
    Label name = new Label(texts.get("scene"));
    ComboBox<String> scenes = new ComboBox<>();
    scenes.setId("scenes");
    scenes.setAccessibleText(texts.get("scene"));
    name.setLabelFor(scenes);
    Runnable show =
        () -> {
          shows = true;
          List<String> ids = bench.project().scenes().stream().map(Scene::id).toList();
          if (!scenes.getItems().equals(ids)) {
            scenes.getItems().setAll(ids);
          }
          scenes.setValue(bench.selection().scene().orElse(null));
          shows = false;
        };
    bench.watch(BenchState::contents, (before, now) -> show.run());
    show.run();
    scenes.setOnAction(
        event -> {
          if (!shows && scenes.getValue() != null) {
            bench.select(bench.selection().withScene(scenes.getValue()));
          }
        });
    Button add = new Button(texts.get("scene.add"));
    add.setId("scene-add");
    add.getStyleClass().add("small-toggle");
    add.setOnAction(event -> rig.addScene());
    Button cue = new Button(texts.get("cue.add"));
    cue.setId("cue-add");
    cue.getStyleClass().add("small-toggle");
    cue.setOnAction(event -> offerKinds.run());
    ToggleButton snap = new ToggleButton(texts.get("snap"));
    snap.setId("snap");
    snap.getStyleClass().add("small-toggle");
    snap.setTooltip(new Tooltip(texts.get("snap.hint")));
    snap.selectedProperty().bindBidirectional(ribbons.snapping().onProperty());
    TextField beat = new TextField();
    beat.setId("beat");
    beat.setPrefColumnCount(4);
    beat.setPromptText(texts.get("beat.none"));
    beat.setAccessibleText(texts.get("beat"));
    Label perMinute = new Label(texts.get("beat"));
    perMinute.setLabelFor(beat);
    beat.textProperty()
        .addListener(
            (of, before, now) ->
                ribbons
                    .snapping()
                    .beatMsProperty()
                    .set(
                        NumberText.parse(now)
                            .filter(rate -> rate.compareTo(BigDecimal.ONE) >= 0)
                            .filter(rate -> rate.compareTo(MINUTE_MS) <= 0)
                            .map(rate -> MINUTE_MS.divide(rate, java.math.MathContext.DECIMAL64))
                            .or(Optional::empty)));
    getChildren().setAll(name, scenes, add, cue, snap, perMinute, beat);
  }
}
