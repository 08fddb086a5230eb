package lampwright.app.workshop.view.drawing;

import javafx.animation.Animation;
import javafx.animation.PauseTransition;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.util.Duration;
import lampwright.app.workshop.model.Gauge;
import lampwright.app.workshop.model.drawing.Exposures;
import lampwright.app.workshop.view.GaugeRuleView;
import lampwright.app.workshop.words.Texts;

/** The exposure of the view that is shown, and its meter: a press on that sets it. */
final class ExposureBar extends HBox {
  private static final double METER_WIDTH = 60;
  private static final double SLIDER_WIDTH = 64;
  private static final double SLIDER_LEAST = 48;

  /**
   * @param narrow whether there is room for the slider and the meter only; the figure is then the
   *     tooltip of the slider
   */
  ExposureBar(Exposures model, ObservableValue<Boolean> narrow) {
    super(4);
    setAlignment(Pos.CENTER_LEFT);
    Texts texts = Texts.of("drawing");
    Slider exposure = new Slider(Exposures.LEAST, Exposures.MOST, 0);
    exposure.setId("exposure");
    exposure.setMajorTickUnit(1);
    exposure.setMinorTickCount(0);
    exposure.setSnapToTicks(true);
    exposure.setBlockIncrement(1);
    exposure.prefWidthProperty().bind(narrow.map(is -> is ? SLIDER_LEAST : SLIDER_WIDTH));
    exposure.setAccessibleText(texts.get("exposure.accessible"));
    exposure.valueProperty().bindBidirectional(model.doublingsProperty());
    Label factor = new Label();
    factor.getStyleClass().add("field-range");
    factor.visibleProperty().bind(narrow.map(is -> !is));
    factor.managedProperty().bind(factor.visibleProperty());
    Tooltip figure = new Tooltip();
    figure.textProperty().bind(factor.textProperty());
    exposure.setTooltip(figure);
    GaugeRuleView rule = new GaugeRuleView(METER_WIDTH, METER_WIDTH);
    Button meter = new Button();
    meter.setId("exposure-meter");
    meter.getStyleClass().add("meter");
    meter.setGraphic(rule);
    meter.setOnAction(event -> model.byMeter());
    Tooltip details = new Tooltip();
    details.setWrapText(true);
    details.setMaxWidth(420);
    meter.setTooltip(details);
    Runnable show =
        () -> {
          Gauge now = model.meterProperty().get();
          factor.setText(now.reading());
          rule.show(now);
          details.setText(now.details());
          meter.setAccessibleText(now.details());
        };
    // A figure that changes with every frame can't be read; ten times a second can.
    PauseTransition rest = new PauseTransition(Duration.millis(100));
    rest.setOnFinished(event -> show.run());
    model
        .meterProperty()
        .addListener(
            of -> {
              if (rest.getStatus() != Animation.Status.RUNNING) {
                rest.playFromStart();
              }
            });
    model.doublingsProperty().addListener((of, before, now) -> show.run());
    show.run();
    getChildren().setAll(exposure, factor, meter);
  }
}
