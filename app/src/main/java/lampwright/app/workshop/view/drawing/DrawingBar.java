package lampwright.app.workshop.view.drawing;

import java.util.List;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import lampwright.app.workshop.model.BenchState;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.words.Texts;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.View;

/** Above the drawing: which side, day or night, how much light; and lamps without a place. */
public final class DrawingBar extends FlowPane {
  /** Below this width the exposure has no figure beside it, so that the bar stays one row. */
  private static final double NARROW = 430;

  public DrawingBar(DrawingModel model) {
    Texts texts = Texts.of("drawing");
    getStyleClass().add("drawing-bar");
    setHgap(8);
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
    Region light = new ExposureBar(model.exposures(), widthProperty().lessThan(NARROW));
    // One control however many there are: a row of them would push the ribbons off the window.
    MenuButton unplaced = new MenuButton();
    unplaced.setId("unplaced");
    unplaced.getStyleClass().add("small-toggle");
    unplaced.managedProperty().bind(unplaced.visibleProperty());
    Runnable list =
        () -> {
          List<Lamp> lamps = model.unplaced();
          unplaced.setVisible(!lamps.isEmpty());
          unplaced.setText(texts.get("unplaced", Integer.toString(lamps.size())));
          unplaced.getItems().setAll(lamps.stream().map(lamp -> choice(model, lamp)).toList());
        };
    model.bench().watch(BenchState::contents, (before, now) -> list.run());
    list.run();
    getChildren().setAll(sides, night, light, unplaced);
  }

  private static MenuItem choice(DrawingModel model, Lamp lamp) {
    MenuItem item = new MenuItem(Titles.of(lamp));
    item.setMnemonicParsing(false);
    item.setId("unplaced-" + lamp.id());
    item.setOnAction(event -> model.choose(lamp.id(), false));
    return item;
  }
}
