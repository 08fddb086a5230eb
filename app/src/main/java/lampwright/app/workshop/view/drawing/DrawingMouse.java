package lampwright.app.workshop.view.drawing;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.scene.Cursor;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.input.ZoomEvent;
import lampwright.app.picture.Dots;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.drawing.Sight;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Lamp;
import org.jspecify.annotations.Nullable;

/** What the mouse does on the drawing: it chooses and places lamps, drags and sizes them. */
final class DrawingMouse {
  /** A hand that moves by less has not moved, in pixels. */
  private static final double STILL = 2;

  private static final double WHEEL_ZOOM = 1.004;

  private final DrawingModel model;
  private final Supplier<Dots.Frame> frame;
  private @Nullable Project dragFrom;
  private Object gesture = new Object();
  private Sight panFrom = Sight.WHOLE;
  private boolean panning;
  private double pressX;
  private double pressY;

  /**
   * @param frame where the drawing stands in its pane now
   */
  DrawingMouse(DrawingModel model, Supplier<Dots.Frame> frame) {
    this.model = model;
    this.frame = frame;
  }

  void pressed(MouseEvent event) {
    Optional<Lamp> lamp = at(event);
    panning = false;
    if (model.sheet().dropper().isActive()) {
      model.sheet().dropper().give(lamp.flatMap(model::colourNow));
      return;
    }
    if (model.sheet().picker().isActive()) {
      lamp.ifPresent(picked -> model.sheet().picker().give(picked.id()));
      return;
    }
    pressX = event.getX();
    pressY = event.getY();
    gesture = new Object();
    if (lamp.isPresent()) {
      boolean held = model.bench().selection().lamps().contains(lamp.get().id());
      if (!held || event.isShortcutDown()) {
        model.choose(lamp.get().id(), event.isShiftDown() || event.isShortcutDown());
      }
      dragFrom = model.bench().project();
    } else if (model.waiting().isPresent()) {
      double x = (event.getX() - frame.get().x()) / frame.get().width();
      double y = (event.getY() - frame.get().y()) / frame.get().height();
      model.put(model.waiting().get().id(), x, y);
    } else {
      panning = true;
      panFrom = model.sightProperty().get();
      model.bench().select(model.bench().selection().withLamps(List.of()).withCues(List.of()));
    }
  }

  void dragged(MouseEvent event) {
    Project from = dragFrom;
    if (from != null) {
      model.drag(
          from,
          (event.getX() - pressX) / frame.get().width(),
          (event.getY() - pressY) / frame.get().height(),
          gesture);
    } else if (panning) {
      model
          .sightProperty()
          .set(panFrom.moved(event.getX() - pressX, event.getY() - pressY, frame.get()));
    }
  }

  /** Lets go; a fast hand lets go where no drag was told of before. */
  void released(MouseEvent event) {
    if (Math.hypot(event.getX() - pressX, event.getY() - pressY) > STILL) {
      dragged(event);
    }
    panning = false;
    dragFrom = null;
    model.bench().endGesture();
  }

  /** The wheel looks nearer or from further away; with the shortcut key it sizes lamps. */
  void scrolled(ScrollEvent event, double paneWidth, double paneHeight) {
    if (event.isShortcutDown() && event.getDeltaY() != 0) {
      model.resize(event.getDeltaY() > 0 ? 1.1 : 1 / 1.1);
      event.consume();
    } else if (event.isDirect() || event.isShiftDown()) {
      Sight now = model.sightProperty().get();
      model.sightProperty().set(now.moved(event.getDeltaX(), event.getDeltaY(), frame.get()));
      event.consume();
    } else if (event.getDeltaY() != 0) {
      double factor = Math.pow(WHEEL_ZOOM, event.getDeltaY());
      zoom(factor, event.getX(), event.getY(), paneWidth, paneHeight);
      event.consume();
    }
  }

  /** Two fingers look nearer or from further away. */
  void pinched(ZoomEvent event, double paneWidth, double paneHeight) {
    zoom(event.getZoomFactor(), event.getX(), event.getY(), paneWidth, paneHeight);
    event.consume();
  }

  private void zoom(double factor, double x, double y, double paneWidth, double paneHeight) {
    Sight now = model.sightProperty().get();
    model.sightProperty().set(now.zoomed(factor, frame.get(), x, y, paneWidth, paneHeight));
  }

  /** Tells by its shape what a press would do. */
  Cursor cursor(MouseEvent event) {
    if (at(event).isPresent()) {
      return Cursor.HAND;
    }
    return model.waiting().isPresent() ? Cursor.CROSSHAIR : Cursor.DEFAULT;
  }

  private Optional<Lamp> at(MouseEvent event) {
    return model.at(frame.get(), event.getX(), event.getY());
  }
}
