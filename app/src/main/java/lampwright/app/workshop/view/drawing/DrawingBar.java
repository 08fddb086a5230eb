package lampwright.app.workshop.view.drawing;

import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.View;

/** Above the drawing: which side, day or night, how much light; and lamps without a place. */
public final class DrawingBar extends FlowPane {
  public DrawingBar(DrawingModel model) {
    Texts texts = Texts.of("drawing");
    getStyleClass().add("drawing-bar");
    setHgap(10);
    setVgap(4);
    ToggleGroup views = new ToggleGroup();
    HBox sides = new HBox(2);
    for (View view : View.values()) {
      ToggleButton side = new ToggleButton(texts.get("view." + view.key()));
      side.setId("view-" + view.key());
      side.setToggleGroup(views);
      side.setUserData(view);
      side.getStyleClass().add("small-toggle");
      sides.getChildren().add(side);
    }
    Runnable show =
        () ->
            views.getToggles().stream()
                .filter(t -> t.getUserData() == model.view())
                .forEach(views::selectToggle);
    show.run();
    model.sheet().viewProperty().addListener((of, before, now) -> show.run());
    views
        .selectedToggleProperty()
        .addListener(
            (of, before, now) -> {
              if (now == null) {
                // One side is always shown.
                show.run();
              } else {
                model.sheet().viewProperty().set((View) now.getUserData());
              }
            });
    ToggleButton night = new ToggleButton();
    night.setId("night");
    night.getStyleClass().add("small-toggle");
    night.selectedProperty().bindBidirectional(model.sheet().nightProperty());
    night
        .textProperty()
        .bind(
            javafx.beans.binding.Bindings.when(model.sheet().nightProperty())
                .then(texts.get("night"))
                .otherwise(texts.get("day")));
    Slider exposure = new Slider(DrawingModel.LEAST_EXPOSURE, DrawingModel.MOST_EXPOSURE, 0);
    exposure.setId("exposure");
    exposure.setMajorTickUnit(1);
    exposure.setMinorTickCount(0);
    exposure.setSnapToTicks(true);
    exposure.setBlockIncrement(1);
    exposure.setPrefWidth(90);
    exposure.setAccessibleText(texts.get("exposure.accessible"));
    exposure.valueProperty().bindBidirectional(model.exposureProperty());
    Label factor = new Label();
    factor.getStyleClass().add("field-range");
    factor
        .textProperty()
        .bind(
            javafx.beans.binding.Bindings.createStringBinding(
                () -> {
                  int doublings = model.exposureProperty().get();
                  return texts.get(
                      "exposure",
                      doublings >= 0 ? Integer.toString(1 << doublings) : "1/" + (1 << -doublings));
                },
                model.exposureProperty()));
    HBox light = new HBox(4, exposure, factor);
    light.setAlignment(Pos.CENTER_LEFT);
    HBox unplaced = new HBox(4);
    unplaced.setAlignment(Pos.CENTER_LEFT);
    Runnable list =
        () -> {
          unplaced.getChildren().clear();
          if (!model.unplaced().isEmpty()) {
            unplaced.getChildren().add(new Label(texts.get("unplaced")));
          }
          model.unplaced().stream()
              .limit(12)
              .forEach(
                  lamp -> {
                    ToggleButton chip = new ToggleButton(Titles.of(lamp));
                    chip.setId("unplaced-" + lamp.id());
                    chip.getStyleClass().add("small-toggle");
                    chip.setSelected(model.bench().selection().lamps().contains(lamp.id()));
                    chip.setOnAction(event -> model.choose(lamp.id(), false));
                    unplaced.getChildren().add(chip);
                  });
        };
    model.bench().watch(BenchState::contents, (before, now) -> list.run());
    list.run();
    getChildren().setAll(sides, night, light, unplaced);
  }
}
