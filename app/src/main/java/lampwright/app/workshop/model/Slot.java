package lampwright.app.workshop.model;

import java.util.Optional;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.edit.Kind;

/**
 * One value of a form: what it is now, and the way to change it. Its value follows the project when
 * it is {@linkplain #refresh refreshed}.
 */
public final class Slot<V> {
  /** Changes the value in the project. */
  @FunctionalInterface
  public interface Change<V> {
    /**
     * Makes it so.
     *
     * @param gesture steps of one drag or burst of typing have the same one
     * @return why the model refused it; empty if it took it
     */
    Optional<String> to(V value, Optional<Object> gesture);
  }

  private final String key;
  private final Kind<V> kind;
  private final Supplier<Optional<V>> read;
  private final Change<V> change;
  private final ReadOnlyObjectWrapper<V> value;
  private final ReadOnlyObjectWrapper<Optional<String>> refusal =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  /**
   * @param key of its texts
   * @param read what it is now; empty if what it belongs to is gone
   */
  public Slot(String key, Kind<V> kind, V first, Supplier<Optional<V>> read, Change<V> change) {
    this.key = key;
    this.kind = kind;
    this.read = read;
    this.change = change;
    this.value = new ReadOnlyObjectWrapper<>(first);
  }

  public String key() {
    return key;
  }

  public Kind<V> kind() {
    return kind;
  }

  /** The value in the project. */
  public ReadOnlyObjectProperty<V> valueProperty() {
    return value.getReadOnlyProperty();
  }

  public V value() {
    return value.get();
  }

  /** Why the last change was refused. */
  public ReadOnlyObjectProperty<Optional<String>> refusalProperty() {
    return refusal.getReadOnlyProperty();
  }

  /** Reads it anew. */
  public void refresh() {
    read.get().ifPresent(value::set);
  }

  /** Changes it, as one edit. */
  public boolean set(V wanted) {
    return set(wanted, Optional.empty());
  }

  /** Changes it as a step of a gesture. Returns whether the model took it. */
  public boolean set(V wanted, Optional<Object> gesture) {
    refusal.set(change.to(wanted, gesture));
    refresh();
    return refusal.get().isEmpty();
  }
}
