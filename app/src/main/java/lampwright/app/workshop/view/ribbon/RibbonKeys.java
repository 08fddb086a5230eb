package lampwright.app.workshop.view.ribbon;

import javafx.scene.input.KeyEvent;
import lampwright.app.workshop.model.ribbon.CueCommands;
import lampwright.app.workshop.model.ribbon.KeyframeCommands;

/** What the keys do in the ribbons. */
final class RibbonKeys {
  private final CueCommands commands;
  private final KeyframeCommands keyframes;
  private final Runnable toCueSettings;
  private final Runnable offerKinds;
  private final Runnable cancel;

  /**
   * @param toCueSettings gives the focus to the settings of the selected cue
   * @param offerKinds opens the list of patterns for a fresh cue
   * @param cancel gives up what the mouse does, or the choice of cues
   */
  RibbonKeys(
      CueCommands commands,
      KeyframeCommands keyframes,
      Runnable toCueSettings,
      Runnable offerKinds,
      Runnable cancel) {
    this.commands = commands;
    this.keyframes = keyframes;
    this.toCueSettings = toCueSettings;
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
      case LEFT -> commands.nudge(-frames);
      case RIGHT -> commands.nudge(frames);
      case UP -> commands.toRow(-1);
      case DOWN -> commands.toRow(1);
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
      case UP -> commands.stepRow(-1);
      case DOWN -> commands.stepRow(1);
      case ENTER -> toCueSettings.run();
      case INSERT -> offerKinds.run();
      case DELETE, BACK_SPACE -> remove();
      case ESCAPE -> cancel.run();
      default -> {
        return false;
      }
    }
    return true;
  }

  private void remove() {
    if (keyframes.selectedProperty().get().isPresent()) {
      keyframes.remove();
    } else {
      commands.remove();
    }
  }

  private void along(KeyEvent event, int by) {
    if (event.isShiftDown()) {
      commands.lengthen(by);
    } else {
      commands.step(by);
    }
  }
}
