package lampwright.engine.field;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What gives one component of a record: a field of the file, or several.
 *
 * @param <R> the record
 * @param <V> the component's value
 */
public abstract sealed class Part<R, V> permits Field, Group {
  private final String component;
  private final Function<R, V> get;
  private @Nullable Shape<R> shape;
  private int index;

  Part(String component, Function<R, V> get) {
    this.component = component;
    this.get = get;
  }

  /** The name of the component. */
  public String component() {
    return component;
  }

  /** The component of a record. */
  public V get(R record) {
    return get.apply(record);
  }

  Function<R, V> getter() {
    return get;
  }

  /**
   * A copy of a record with another value.
   *
   * @throws lampwright.engine.check.InvalidModelException if the record refuses it
   */
  public R with(R record, V value) {
    return shape().draft(record).set(this, value).make();
  }

  /** The shape that this is a part of. */
  public Shape<R> shape() {
    if (shape == null) {
      throw new IllegalStateException(component + " is part of no shape");
    }
    return shape;
  }

  /** Its place among the parts of its shape. */
  int index() {
    return index;
  }

  void joins(Shape<R> whole, int place) {
    if (shape != null) {
      throw new IllegalStateException(component + " is part of " + shape.key());
    }
    shape = whole;
    index = place;
  }

  /** The fields of the file that give it. */
  public abstract List<Field<?, ?>> fields();

  /** What the component is where the file says nothing. */
  abstract V fallback(Draft<R> draft);
}
