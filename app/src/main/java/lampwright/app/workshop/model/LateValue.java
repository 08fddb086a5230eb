package lampwright.app.workshop.model;

import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectPropertyBase;
import org.jspecify.annotations.Nullable;

/**
 * A value that is made when somebody asks for it, not each time that it changes: what changes with
 * every frame of the screen is read less often. Who listens to changes, and not to invalidations
 * alone, has it made each time. For one thread: the screen's.
 *
 * @param <T> never null
 */
public final class LateValue<T> extends ReadOnlyObjectPropertyBase<T> {
  private final Supplier<T> maker;
  private @Nullable T made;

  public LateValue(Supplier<T> maker) {
    this.maker = maker;
  }

  @Override
  public T get() {
    T value = made;
    if (value == null) {
      value = maker.get();
      made = value;
    }
    return value;
  }

  /** Another value may be right from now on. */
  public void changed() {
    if (made != null) {
      made = null;
      fireValueChangedEvent();
    }
  }

  @Override
  public @Nullable Object getBean() {
    return null;
  }

  @Override
  public String getName() {
    return "";
  }
}
