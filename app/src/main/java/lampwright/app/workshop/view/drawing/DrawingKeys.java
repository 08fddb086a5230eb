package lampwright.app.workshop.view.drawing;

import javafx.scene.input.KeyEvent;
import lampwright.app.workshop.model.drawing.DrawingModel;
import lampwright.app.workshop.model.drawing.Sight;

/** What the keys do on the drawing: they choose, place, move and size lamps. */
final class DrawingKeys {
  private static final double STEP = 0.01;
  private static final double ZOOM = 1.25;
  private static final double PAN = 0.1;

  private final DrawingModel model;

  DrawingKeys(DrawingModel model) {
    this.model = model;
  }

  void pressed(KeyEvent event) {
    if (event.isShortcutDown()) {
      return;
    }
    boolean known = event.isAltDown() ? altKey(event) : plainKey(event);
    if (known) {
      event.consume();
    }
  }

  // Alt moves the selected lamps and makes them larger or smaller.
  private boolean altKey(KeyEvent event) {
    double step = event.isShiftDown() ? STEP / 4 : STEP;
    switch (event.getCode()) {
      case LEFT -> model.nudge(-step, 0);
      case RIGHT -> model.nudge(step, 0);
      case UP -> model.nudge(0, -step);
      case DOWN -> model.nudge(0, step);
      case PLUS, ADD, EQUALS -> model.resize(1.1);
      case MINUS, SUBTRACT -> model.resize(1 / 1.1);
      default -> {
        return false;
      }
    }
    return true;
  }

  private void pan(double byX, double byY) {
    Sight now = model.sightProperty().get();
    double share = PAN / now.zoom();
    model.sightProperty().set(new Sight(now.zoom(), now.x() + byX * share, now.y() + byY * share));
  }

  // Shift moves what is in sight.
  private boolean shiftKey(KeyEvent event) {
    switch (event.getCode()) {
      case LEFT -> pan(-1, 0);
      case RIGHT -> pan(1, 0);
      case UP -> pan(0, -1);
      case DOWN -> pan(0, 1);
      default -> {
        return false;
      }
    }
    return true;
  }

  private boolean plainKey(KeyEvent event) {
    if (event.isShiftDown() && shiftKey(event)) {
      return true;
    }
    switch (event.getCode()) {
      case PLUS, ADD, EQUALS -> model.zoom(ZOOM);
      case MINUS, SUBTRACT -> model.zoom(1 / ZOOM);
      case DIGIT0, NUMPAD0 -> model.sightProperty().set(Sight.WHOLE);
      case UP, LEFT -> model.step(-1);
      case DOWN, RIGHT -> model.step(1);
      case ENTER -> model.waiting().ifPresent(lamp -> model.put(lamp.id(), 0.5, 0.5));
      case DELETE, BACK_SPACE -> model.takeOff();
      case ESCAPE -> model.bench().cancelGesture();
      default -> {
        return false;
      }
    }
    return true;
  }
}
