package lampwright.app.workshop.view;

import javafx.event.Event;
import javafx.event.EventType;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;

/**
 * The left button of a mouse, event by event. A robot's moves may be taken together, so that nobody
 * knows which of them a control is told of; here it is these and no others. On the screen's thread.
 */
public final class MouseHand {
  private final Node on;
  private boolean shift;
  private boolean shortcut;
  private boolean still = true;

  /**
   * @param on what the events are for, in whose own points they are given
   */
  public MouseHand(Node on) {
    this.on = on;
  }

  /** Holds Shift from now on. */
  public MouseHand withShift() {
    shift = true;
    return this;
  }

  /** Holds the shortcut key of this system from now on: Control, or Command. */
  public MouseHand withShortcut() {
    shortcut = true;
    return this;
  }

  public MouseHand press(double x, double y) {
    still = true;
    return fire(MouseEvent.MOUSE_PRESSED, x, y);
  }

  public MouseHand drag(double x, double y) {
    still = false;
    return fire(MouseEvent.MOUSE_DRAGGED, x, y);
  }

  /** Lets go at a point that need not be the one dragged to last. */
  public MouseHand release(double x, double y) {
    return fire(MouseEvent.MOUSE_RELEASED, x, y);
  }

  /** Moves on after the press, so that a release is no click. */
  public MouseHand moved() {
    still = false;
    return this;
  }

  private MouseHand fire(EventType<MouseEvent> type, double x, double y) {
    Point2D inScene = on.localToScene(x, y);
    Point2D onScreen = on.localToScreen(x, y);
    Event.fireEvent(
        on, event(type, inScene, onScreen == null ? inScene : onScreen, shift, shortcut, still));
    return this;
  }

  /** One event by itself, for a handler that is called without a window. */
  public static MouseEvent event(EventType<MouseEvent> type, double x, double y) {
    Point2D at = new Point2D(x, y);
    return event(type, at, at, false, false, type == MouseEvent.MOUSE_PRESSED);
  }

  /** One event by itself, with Shift or the shortcut key held. */
  public static MouseEvent event(
      EventType<MouseEvent> type, double x, double y, boolean shift, boolean shortcut) {
    Point2D at = new Point2D(x, y);
    return event(type, at, at, shift, shortcut, type == MouseEvent.MOUSE_PRESSED);
  }

  private static MouseEvent event(
      EventType<MouseEvent> type,
      Point2D at,
      Point2D screen,
      boolean shift,
      boolean shortcut,
      boolean still) {
    boolean mac = System.getProperty("os.name", "").startsWith("Mac");
    return new MouseEvent(
        type,
        at.getX(),
        at.getY(),
        screen.getX(),
        screen.getY(),
        MouseButton.PRIMARY,
        1,
        shift,
        shortcut && !mac,
        false,
        shortcut && mac,
        type != MouseEvent.MOUSE_RELEASED,
        false,
        false,
        false,
        false,
        still,
        null);
  }
}
