package lampwright.app.workshop.view;

import java.util.function.Consumer;
import javafx.animation.Animation;
import javafx.animation.PauseTransition;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Rectangle;
import javafx.util.Duration;
import lampwright.app.workshop.model.Gauge;
import lampwright.app.workshop.model.GaugesModel;
import lampwright.app.workshop.words.Texts;

/** The gauges in a row, always in sight. Each is a button that leads to what it measures. */
public final class GaugesView extends HBox {
  private static final double BAR_WIDTH = 96;
  private static final double BAR_HEIGHT = 6;

  private final Texts texts = Texts.of("gauges");
  private final Consumer<Gauge> lead;

  /**
   * @param lead goes to what a gauge measures
   */
  public GaugesView(GaugesModel model, Consumer<Gauge> lead) {
    this.lead = lead;
    getStyleClass().add("gauges");
    getChildren()
        .setAll(
            gauge(model.supplyProperty()),
            gauge(model.wireProperty()),
            gauge(model.memoryProperty()),
            gauge(model.flashProperty()));
  }

  private Button gauge(ObservableValue<Gauge> gauge) {
    Label name = new Label(texts.get(gauge.getValue().key()));
    name.getStyleClass().add("gauge-name");
    Label reading = new Label();
    reading.getStyleClass().add("gauge-reading");
    Label sign = new Label();
    sign.getStyleClass().add("gauge-sign");
    HBox words = new HBox(6, name, reading, sign);
    words.setAlignment(Pos.BASELINE_LEFT);
    Bar bar = new Bar();
    Button button = new Button();
    button.setGraphic(new VBox(3, words, bar));
    button.setId("gauge-" + gauge.getValue().key());
    button.getStyleClass().setAll("button", "gauge");
    button.setAccessibleRole(AccessibleRole.BUTTON);
    Tooltip details = new Tooltip();
    details.setWrapText(true);
    details.setMaxWidth(520);
    details.setShowDelay(Duration.millis(300));
    details.setShowDuration(Duration.minutes(1));
    button.setTooltip(details);
    button.setOnAction(event -> lead.accept(gauge.getValue()));
    HBox.setHgrow(button, Priority.SOMETIMES);
    Runnable show = () -> show(gauge.getValue(), button, reading, sign, bar, details);
    // A figure that changes with every frame can't be read; ten times a second can.
    PauseTransition rest = new PauseTransition(Duration.millis(100));
    rest.setOnFinished(event -> show.run());
    gauge.addListener(
        (of, before, now) -> {
          if (rest.getStatus() != Animation.Status.RUNNING) {
            rest.playFromStart();
          }
        });
    show.run();
    return button;
  }

  private void show(Gauge now, Button button, Label reading, Label sign, Bar bar, Tooltip details) {
    reading.setText(now.reading());
    // A sign beside the colour, for those who don't see the one.
    sign.setText(
        switch (now.state()) {
          case OVER -> "!!";
          case NEAR -> "!";
          case FITS, OPEN -> "";
        });
    bar.show(now);
    if (!details.getText().equals(now.details())) {
      details.setText(now.details());
    }
    for (Gauge.State state : Gauge.State.values()) {
      button.pseudoClassStateChanged(
          javafx.css.PseudoClass.getPseudoClass(state.name().toLowerCase(java.util.Locale.ROOT)),
          state == now.state());
    }
    button.setAccessibleText(
        texts.get(
            "gauge.accessible",
            texts.get(now.key()),
            now.reading(),
            texts.get("gauge.state." + now.state().name())));
    button.setAccessibleHelp(now.details());
  }

  /** The present share as a filled bar, the mark as a tick. */
  private static final class Bar extends StackPane {
    private final Region filled = new Region();
    private final Rectangle tick = new Rectangle(2, BAR_HEIGHT);

    Bar() {
      getStyleClass().add("gauge-bar");
      filled.getStyleClass().add("gauge-filled");
      tick.getStyleClass().add("gauge-tick");
      setAlignment(Pos.CENTER_LEFT);
      setMinSize(BAR_WIDTH, BAR_HEIGHT);
      setMaxSize(BAR_WIDTH, BAR_HEIGHT);
      filled.setMinHeight(BAR_HEIGHT);
      filled.setMaxHeight(BAR_HEIGHT);
      getChildren().addAll(filled, tick);
    }

    void show(Gauge gauge) {
      setVisible(gauge.share().isPresent() || gauge.mark().isPresent());
      double share = Math.min(1, gauge.share().orElse(0));
      filled.setMinWidth(share * BAR_WIDTH);
      filled.setMaxWidth(share * BAR_WIDTH);
      tick.setVisible(gauge.mark().isPresent());
      tick.setTranslateX(Math.min(1, gauge.mark().orElse(0)) * (BAR_WIDTH - 2));
    }
  }
}
