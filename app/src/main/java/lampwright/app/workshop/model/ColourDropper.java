package lampwright.app.workshop.model;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.engine.light.Colour;

/** Takes a colour from what is clicked next: a cue, a ribbon or a lamp. */
public final class ColourDropper {
  private final ReadOnlyObjectWrapper<Optional<Consumer<Colour>>> taker =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  /** Who is given the colour; empty while nobody waits for one. */
  public ReadOnlyObjectProperty<Optional<Consumer<Colour>>> takerProperty() {
    return taker.getReadOnlyProperty();
  }

  public boolean isActive() {
    return taker.get().isPresent();
  }

  /** Waits for a colour, for this one alone. */
  public void start(Consumer<Colour> wanted) {
    taker.set(Optional.of(wanted));
  }

  /** Waits no more. */
  public void cancel() {
    taker.set(Optional.empty());
  }

  /** Gives the colour of what was clicked, if it has one, and waits no more. */
  public void give(Optional<Colour> colour) {
    Optional<Consumer<Colour>> wanted = taker.get();
    cancel();
    wanted.ifPresent(to -> colour.ifPresent(to));
  }
}
