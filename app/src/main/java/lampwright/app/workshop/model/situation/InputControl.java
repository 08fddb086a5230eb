package lampwright.app.workshop.model.situation;

import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import lampwright.engine.rig.Input;
import lampwright.engine.situation.ShowMachine;

/** The stick or the switch by which an input is worked. */
public final class InputControl {
  public static final int LEAST_US = 800;
  public static final int CENTRE_US = 1500;
  public static final int GREATEST_US = 2200;
  // As many as teach a channel its centre.
  private static final int AT_REST = 16;

  private final Input input;
  private final IntegerProperty widthUs = new SimpleIntegerProperty(CENTRE_US);
  private final BooleanProperty lost = new SimpleBooleanProperty();
  private final BooleanProperty on = new SimpleBooleanProperty();

  InputControl(Input input) {
    this.input = input;
  }

  public Input input() {
    return input;
  }

  /** Whether it is a stick; else it is a switch. */
  public boolean stick() {
    return input.isChannel();
  }

  /** The width of the pulses of a stick, {@value #LEAST_US} to {@value #GREATEST_US} us. */
  public IntegerProperty widthUsProperty() {
    return widthUs;
  }

  /** Whether no pulses come of a stick. */
  public BooleanProperty lostProperty() {
    return lost;
  }

  /** Whether a switch is on. */
  public BooleanProperty onProperty() {
    return on;
  }

  /** Puts a stick at rest, with its signal; a switch stays. */
  public void centre() {
    widthUs.set(CENTRE_US);
    lost.set(false);
  }

  /** As another one was set, as far as it is of this kind. */
  void setAs(InputControl before) {
    widthUs.set(before.widthUs.get());
    lost.set(before.lost.get());
    on.set(before.on.get());
  }

  /** Shows what is read of it in a frame. */
  void show(boolean isLost, int value) {
    if (!stick()) {
      on.set(value != 0);
      return;
    }
    lost.set(isLost);
    if (!isLost) {
      widthUs.set(Math.max(LEAST_US, Math.min(GREATEST_US, value)));
    }
  }

  /** Teaches a channel its centre, as if the sticks had been at rest before. */
  void rest(ShowMachine machine, int place) {
    for (int i = 0; stick() && i < AT_REST; i++) {
      machine.take(place, CENTRE_US);
    }
  }

  /** What it reads by the next frame. */
  void feed(ShowMachine machine, int place) {
    if (!stick()) {
      machine.take(place, on.get() != input.activeLow() ? 1 : 0);
    } else if (!lost.get()) {
      machine.take(place, widthUs.get());
    }
  }
}
