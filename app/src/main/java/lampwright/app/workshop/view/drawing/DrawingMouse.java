package lampwright.app.workshop.view.drawing;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.scene.Cursor;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import lampwright.app.workshop.model.drawing.Dots;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Lamp;
import org.jspecify.annotations.Nullable;

/** What the mouse does on the drawing: it chooses and places lamps, drags and sizes them. */
final class DrawingMouse {
  private final DrawingModel model;
  private final Supplier<Dots.Frame> frame;
  private @Nullable Project dragFrom;
  private Object gesture = new Object();
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
    if (model.sheet().dropper().isActive()) {
      model.sheet().dropper().give(lamp.flatMap(model::colourNow));
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
    }
  }

  void release() {
    dragFrom = null;
    model.bench().endGesture();
  }

  void scrolled(ScrollEvent event) {
    if (event.isShortcutDown() && event.getDeltaY() != 0) {
      model.resize(event.getDeltaY() > 0 ? 1.1 : 1 / 1.1);
      event.consume();
    }
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
