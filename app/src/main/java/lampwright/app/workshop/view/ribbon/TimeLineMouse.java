package lampwright.app.workshop.view.ribbon;

import java.util.Optional;
import javafx.scene.input.MouseEvent;
import lampwright.app.workshop.model.ribbon.EndDrag;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.engine.scene.Scene;
import org.jspecify.annotations.Nullable;

/** What the mouse does on the time line: it takes the playhead along, or the end of the scene. */
final class TimeLineMouse {
  private final RibbonsModel model;
  private @Nullable EndDrag drag;
  private boolean scrubbing;
  private double pressX;

  TimeLineMouse(RibbonsModel model) {
    this.model = model;
  }

  /**
   * Begins.
   *
   * @param height of the time line; the mark of the end is in its lower half
   */
  void pressed(MouseEvent event, double height) {
    pressX = event.getX();
    Optional<Scene> scene = model.bench().scene();
    if (scene.isEmpty()) {
      return;
    }
    double end = model.axis().x(scene.get().lengthMs().doubleValue());
    if (Math.abs(event.getX() - end) <= RowsMouse.MARK_REACH && event.getY() > height / 2) {
      drag = new EndDrag(model);
    } else {
      scrubbing = true;
      model.scrub(model.axis().ms(event.getX()));
    }
  }

  void dragged(MouseEvent event) {
    double ms = Math.max(0, model.axis().ms(event.getX()));
    if (drag != null) {
      drag.to(ms, event.isAltDown());
    } else if (scrubbing) {
      model.scrub(ms);
    }
  }

  /** Lets go where the pointer is now. */
  void released(MouseEvent event) {
    if (Math.abs(event.getX() - pressX) > RowsMouse.STILL) {
      dragged(event);
    }
    if (drag != null) {
      drag.end();
      drag = null;
    }
    scrubbing = false;
  }

  /** Whether the end of the scene is being dragged. */
  boolean isDragging() {
    return drag != null;
  }

  /** Forgets the end that is dragged, without putting it down. */
  void forget() {
    drag = null;
  }
}
