package lampwright.engine.field;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What is known so far of a record that is to be made. What is not set has its usual value.
 *
 * @param <R> the record
 */
public final class Draft<R> {
  private final Shape<R> shape;
  // By the index of their parts: a large file has a million of these.
  private final @Nullable Object[] values;

  Draft(Shape<R> shape) {
    this.shape = shape;
    this.values = new Object[shape.parts().size()];
  }

  /** Sets a component. */
  public <V> Draft<R> set(Part<R, V> part, V value) {
    values[own(part)] = value;
    return this;
  }

  /** Whether a component has been set. */
  public boolean has(Part<R, ?> part) {
    return values[own(part)] != null;
  }

  /** A component: what was set, else what is usual. */
  public <V> V get(Part<R, V> part) {
    return has(part) ? given(part).orElseThrow() : part.fallback(this);
  }

  /** A component, if it was set. */
  @SuppressWarnings("unchecked") // only set() puts values, of the part's own type
  public <V> Optional<V> given(Part<R, V> part) {
    return Optional.ofNullable((V) values[own(part)]);
  }

  private int own(Part<R, ?> part) {
    if (part.shape() != shape) {
      throw new IllegalArgumentException(part + " is no part of " + shape);
    }
    return part.index();
  }

  /**
   * The record.
   *
   * @throws lampwright.engine.check.InvalidModelException with all that it refuses
   */
  public R make() {
    return shape.make(this);
  }
}
