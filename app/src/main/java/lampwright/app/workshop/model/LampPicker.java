package lampwright.app.workshop.model;

import java.util.Optional;
import java.util.function.Consumer;

/**
 * Gives the lamps that are clicked in the drawing to someone who asks for them, one after another.
 */
public final class LampPicker {
  private Optional<Consumer<String>> taker = Optional.empty();

  /** Whether a click gives a lamp, and does nothing else. */
  public boolean isActive() {
    return taker.isPresent();
  }

  /** From now on a click gives the lamp's id. */
  public void start(Consumer<String> wanted) {
    taker = Optional.of(wanted);
  }

  /** A click is a click again. */
  public void stop() {
    taker = Optional.empty();
  }

  /** This lamp was clicked. */
  public void give(String lamp) {
    taker.ifPresent(to -> to.accept(lamp));
  }
}
