package lampwright.app.workshop.view;

import java.util.Optional;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Pane;
import lampwright.app.workshop.model.Gauge;
import lampwright.app.workshop.model.GaugeInk;
import lampwright.app.workshop.model.GaugeRule;

/** The rule of a gauge. */
public final class GaugeRuleView extends Pane {
  private static final double HEIGHT = 20;

  // Before the inks, which call back while they are made.
  private Optional<Gauge> shown = Optional.empty();
  private final Canvas canvas;
  private final Inks<GaugeInk> inks;
  private final DisplayPainter painter;

  /**
   * A rule.
   *
   * @param least width in pixels, where there is no more room
   * @param width in pixels
   */
  public GaugeRuleView(double least, double width) {
    canvas = new Canvas(width, HEIGHT);
    inks = new Inks<>(GaugeInk.class, this::paint);
    painter = new DisplayPainter(inks::paint);
    getStyleClass().add("gauge-rule");
    setMinSize(least, HEIGHT);
    setPrefSize(width, HEIGHT);
    setMaxSize(width, HEIGHT);
    getChildren().setAll(inks, canvas);
  }

  @Override
  protected void layoutChildren() {
    if (canvas.getWidth() != getWidth()) {
      canvas.setWidth(getWidth());
      paint();
    }
  }

  /** Shows what a gauge reads; nothing while that is not known. */
  public void show(Gauge gauge) {
    setVisible(gauge.share().isPresent() || gauge.mark().isPresent());
    shown = Optional.of(gauge);
    paint();
  }

  private void paint() {
    if (shown.isPresent()) {
      GraphicsContext g = canvas.getGraphicsContext2D();
      g.clearRect(0, 0, canvas.getWidth(), HEIGHT);
      painter.paint(GaugeRule.of(shown.get(), canvas.getWidth(), HEIGHT), g);
    }
  }
}
