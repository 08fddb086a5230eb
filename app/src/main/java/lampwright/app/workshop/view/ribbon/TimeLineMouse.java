package lampwright.app.workshop.view.ribbon;

import java.util.Optional;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.model.FrameRange;
import lampwright.app.workshop.model.ribbon.EndDrag;
import lampwright.app.workshop.model.ribbon.MarkerCommands;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.engine.scene.Marker;
import lampwright.engine.scene.Scene;
import org.jspecify.annotations.Nullable;

/**
 * What the mouse does on the time line: it takes the playhead along, a marker, the end of the
 * scene, or an end of the range that is looped.
 */
final class TimeLineMouse {
  private enum Hold {
    NOTHING,
    PLAYHEAD,
    MARKER,
    RANGE
  }

  private final RibbonsModel model;
  private final MarkerCommands markers;
  private final Runnable rename;
  private @Nullable EndDrag drag;
  private Hold hold = Hold.NOTHING;
  private Object gesture = new Object();
  private int rangeFixed;
  private double pressX;

  /**
   * @param rename edits the name of the selected marker
   */
  TimeLineMouse(RibbonsModel model, MarkerCommands markers, Runnable rename) {
    this.model = model;
    this.markers = markers;
    this.rename = rename;
  }

  /**
   * Begins.
   *
   * @param height of the time line; flags are in its upper half, the mark of the end in its lower
   */
  void pressed(MouseEvent event, double height) {
    pressX = event.getX();
    hold = Hold.NOTHING;
    Optional<Scene> scene = model.bench().scene();
    if (scene.isEmpty()) {
      return;
    }
    Optional<Marker> flag = model.markerAt(event.getX(), event.getY(), height);
    model.markerProperty().set(flag);
    if (event.getButton() != MouseButton.PRIMARY) {
      return;
    }
    double end = model.axis().x(scene.get().lengthMs().doubleValue());
    if (flag.isPresent()) {
      hold = Hold.MARKER;
      gesture = new Object();
      if (event.getClickCount() == 2) {
        hold = Hold.NOTHING;
        rename.run();
      }
    } else if (takesRange(event, scene.get())) {
      hold = Hold.RANGE;
    } else if (Math.abs(event.getX() - end) <= RowsMouse.MARK_REACH && event.getY() > height / 2) {
      drag = new EndDrag(model);
    } else {
      hold = Hold.PLAYHEAD;
      model.time().scrub(model.axis().ms(event.getX()));
    }
  }

  // With Shift a range is drawn anew; else an end of it that is near is taken.
  private boolean takesRange(MouseEvent event, Scene scene) {
    if (event.isShiftDown()) {
      rangeFixed = frame(event);
      return true;
    }
    Optional<FrameRange> range = model.playhead().range();
    if (range.isEmpty()) {
      return false;
    }
    double from = model.axis().x(CueEdits.frameMs(scene, range.get().from()).doubleValue());
    double to = model.axis().x(CueEdits.frameMs(scene, range.get().to()).doubleValue());
    if (Math.abs(event.getX() - to) <= RowsMouse.MARK_REACH) {
      rangeFixed = range.get().from();
      return true;
    }
    rangeFixed = range.get().to();
    return Math.abs(event.getX() - from) <= RowsMouse.MARK_REACH;
  }

  private int frame(MouseEvent event) {
    return model.time().nearestFrame(Math.max(0, model.axis().ms(event.getX())));
  }

  void dragged(MouseEvent event) {
    double ms = Math.max(0, model.axis().ms(event.getX()));
    if (drag != null) {
      drag.to(ms, event.isAltDown());
      return;
    }
    switch (hold) {
      case PLAYHEAD -> model.time().scrub(ms);
      case MARKER -> markers.move(model.snapping().edge(ms, event.isAltDown()), gesture);
      case RANGE -> {
        int frame = frame(event);
        if (frame != rangeFixed) {
          FrameRange range =
              new FrameRange(Math.min(frame, rangeFixed), Math.max(frame, rangeFixed));
          model.playhead().rangeProperty().set(Optional.of(range));
        }
      }
      case NOTHING -> {}
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
    if (hold == Hold.MARKER) {
      model.bench().endGesture();
    }
    hold = Hold.NOTHING;
  }

  /** Whether something of the project is being dragged. */
  boolean isDragging() {
    return drag != null || hold == Hold.MARKER;
  }

  /** Forgets what is dragged, without putting it down. */
  void forget() {
    drag = null;
    hold = Hold.NOTHING;
  }
}
