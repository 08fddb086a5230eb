package lampwright.app.workshop.view.ribbon;

import javafx.scene.input.KeyEvent;
import lampwright.app.workshop.model.ribbon.CueCommands;

/** What the keys do in the ribbons. */
final class RibbonKeys {
  private final CueCommands hands;
  private final Runnable toCueSheet;
  private final Runnable offerKinds;
  private final Runnable cancel;

  /**
   * @param toCueSheet gives the focus to the sheet of the chosen cue
   * @param offerKinds opens the list of patterns for a fresh cue
   * @param cancel gives up what the mouse does, or the choice of cues
   */
  RibbonKeys(CueCommands hands, Runnable toCueSheet, Runnable offerKinds, Runnable cancel) {
    this.hands = hands;
    this.toCueSheet = toCueSheet;
    this.offerKinds = offerKinds;
    this.cancel = cancel;
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

  // Alt moves the cue, in time and from lamp to lamp.
  private boolean altKey(KeyEvent event) {
    int frames = event.isShiftDown() ? 10 : 1;
    switch (event.getCode()) {
      case LEFT -> hands.nudge(-frames);
      case RIGHT -> hands.nudge(frames);
      case UP -> hands.toRow(-1);
      case DOWN -> hands.toRow(1);
      default -> {
        return false;
      }
    }
    return true;
  }

  private boolean plainKey(KeyEvent event) {
    switch (event.getCode()) {
      case LEFT -> along(event, -1);
      case RIGHT -> along(event, 1);
      case UP -> hands.stepRow(-1);
      case DOWN -> hands.stepRow(1);
      case ENTER -> toCueSheet.run();
      case INSERT -> offerKinds.run();
      case DELETE, BACK_SPACE -> hands.remove();
      case ESCAPE -> cancel.run();
      default -> {
        return false;
      }
    }
    return true;
  }

  private void along(KeyEvent event, int by) {
    if (event.isShiftDown()) {
      hands.lengthen(by);
    } else {
      hands.step(by);
    }
  }
}
