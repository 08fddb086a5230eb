package lampwright.app.workshop.view.ribbon;

import java.util.List;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.ScrollBar;
import javafx.scene.input.ScrollEvent;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.model.ribbon.TimeAxis;

/** Scrolls and zooms the ribbons, by a bar down the rows, a bar along the time, and the wheel. */
final class RibbonScroll {
  private static final double WHEEL_ZOOM = 1.0018;

  private final RibbonsModel model;
  private final ScrollBar down = new ScrollBar();
  private final ScrollBar along = new ScrollBar();
  private boolean shows;

  RibbonScroll(RibbonsModel model) {
    this.model = model;
    down.setOrientation(Orientation.VERTICAL);
    down.setFocusTraversable(false);
    along.setFocusTraversable(false);
    down.valueProperty()
        .addListener(
            (of, before, now) -> {
              if (!shows) {
                model.scrollTo(now.doubleValue());
              }
            });
    along
        .valueProperty()
        .addListener(
            (of, before, now) -> {
              if (!shows) {
                model
                    .time()
                    .axisProperty()
                    .set(new TimeAxis(now.doubleValue(), model.axis().msPerPixel()));
              }
            });
  }

  List<Node> bars() {
    return List.of(down, along);
  }

  double barWidth() {
    return Math.ceil(down.prefWidth(-1));
  }

  /** Puts the bars at the right and lower edge of a pane, along its rows. */
  void place(double paneWidth, double paneHeight, Canvas rows) {
    double bar = barWidth();
    down.resizeRelocate(paneWidth - bar, rows.getLayoutY(), bar, rows.getHeight());
    along.resizeRelocate(rows.getLayoutX(), paneHeight - bar, rows.getWidth(), bar);
  }

  /** Shows by the bars what is in sight. */
  void show() {
    shows = true;
    double most =
        Math.max(0, model.layout().map(RibbonLayout::height).orElse(0.0) - model.height());
    down.setMax(Math.max(1, most));
    down.setVisibleAmount(down.getMax() * model.height() / Math.max(1, most + model.height()));
    down.setDisable(most <= 0);
    down.setValue(model.top());
    double length = model.bench().scene().map(s -> s.lengthMs().doubleValue()).orElse(1.0);
    double inSight = model.width() * model.axis().msPerPixel();
    along.setMax(Math.max(1, Math.max(length - inSight * 0.5, model.axis().leftMs())));
    along.setVisibleAmount(along.getMax() * Math.min(1, inSight / Math.max(1, length)));
    along.setUnitIncrement(inSight / 10);
    along.setBlockIncrement(inSight * 0.8);
    along.setValue(model.axis().leftMs());
    shows = false;
  }

  /**
   * Turns the wheel.
   *
   * @param rowsX where the rows begin, in the event's coordinates
   */
  void wheel(ScrollEvent event, double rowsX) {
    double amount = event.getDeltaY() == 0 ? event.getDeltaX() : event.getDeltaY();
    if (event.isShortcutDown()) {
      double x = Math.max(0, event.getX() - rowsX);
      model.time().axisProperty().set(model.axis().zoomed(Math.pow(WHEEL_ZOOM, amount), x));
    } else if (event.isShiftDown() || event.getDeltaY() == 0) {
      model.time().axisProperty().set(model.axis().panned(-amount));
    } else {
      model.scrollTo(model.top() - amount);
    }
    event.consume();
  }
}
