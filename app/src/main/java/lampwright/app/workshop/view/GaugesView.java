package lampwright.app.workshop.view;

import java.util.List;
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
import javafx.scene.layout.VBox;
import javafx.scene.shape.SVGPath;
import javafx.util.Duration;
import lampwright.app.workshop.model.Gauge;
import lampwright.app.workshop.words.Texts;

/** The gauges in a row, always in sight. Each is a button that leads to what it measures. */
public final class GaugesView extends HBox {
  private static final double RULE_WIDTH = 124;
  private static final double LEAST_RULE = 56;

  /** A reading with the name of a lamp in it may be as long as that. */
  private static final double MOST_READING = 300;

  /** What a gauge reads; in a narrow window the rules give way before it does. */
  private static final class Reading extends SteadyLabel {
    @Override
    protected double computeMinWidth(double height) {
      return Math.min(MOST_READING, computePrefWidth(height));
    }
  }

  private final Texts texts = Texts.of("gauges");
  private final Consumer<Gauge> lead;

  /**
   * @param gauges from the left
   * @param lead goes to what a gauge measures
   */
  public GaugesView(List<? extends ObservableValue<Gauge>> gauges, Consumer<Gauge> lead) {
    this.lead = lead;
    getStyleClass().add("gauges");
    gauges.forEach(gauge -> getChildren().add(gauge(gauge)));
  }

  private Button gauge(ObservableValue<Gauge> gauge) {
    Label name = new Label(texts.get(gauge.getValue().key()));
    name.getStyleClass().add("gauge-name");
    Label reading = new Reading();
    reading.getStyleClass().add("gauge-reading");
    SVGPath sign = new SVGPath();
    sign.getStyleClass().add("gauge-sign");
    HBox head = new HBox(6, name, sign);
    head.setAlignment(Pos.CENTER_LEFT);
    GaugeRuleView rule = new GaugeRuleView(LEAST_RULE, RULE_WIDTH);
    HBox foot = new HBox(10, reading, rule);
    foot.setAlignment(Pos.CENTER_LEFT);
    Button button = new Button();
    button.setGraphic(new VBox(head, foot));
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
    button.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(button, Priority.SOMETIMES);
    Runnable show = () -> show(gauge.getValue(), button, reading, sign, rule, details);
    // A figure that changes with every frame can't be read; ten times a second can.
    PauseTransition rest = new PauseTransition(Duration.millis(100));
    rest.setOnFinished(event -> show.run());
    gauge.addListener(
        of -> {
          if (rest.getStatus() != Animation.Status.RUNNING) {
            rest.playFromStart();
          }
        });
    show.run();
    return button;
  }

  private void show(
      Gauge now, Button button, Label reading, SVGPath sign, GaugeRuleView rule, Tooltip details) {
    reading.setText(now.reading());
    // A sign beside the colour, for those who don't see the one.
    sign.setContent(
        switch (now.state()) {
          case OVER -> Signs.DANGER;
          case NEAR -> Signs.WARNING;
          case FITS, OPEN -> "";
        });
    rule.show(now);
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
            texts
                .find("gauge.state." + now.key() + "." + now.state().name())
                .orElseGet(() -> texts.get("gauge.state." + now.state().name()))));
    button.setAccessibleHelp(now.details());
  }
}
