package lampwright.app.workshop.view.drawing;

import javafx.scene.input.KeyEvent;
import lampwright.app.workshop.model.drawing.DrawingModel;

/** What the keys do on the drawing: they choose, place, move and size lamps. */
final class DrawingKeys {
  private static final double STEP = 0.01;

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

  private boolean plainKey(KeyEvent event) {
    switch (event.getCode()) {
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
