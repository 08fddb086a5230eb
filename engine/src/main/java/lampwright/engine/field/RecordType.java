package lampwright.engine.field;

import java.util.Optional;
import java.util.function.Function;
import lampwright.engine.check.Checks;

/**
 * An object with fields of its own.
 *
 * @param shape its fields
 * @param standIn what represents one that is broken, after the one before it in a list, if any; so
 *     what is around it is checked too
 */
public record RecordType<E>(Shape<E> shape, Optional<Function<Optional<E>, E>> standIn)
    implements FieldType<E> {
  /** An object whose owner is broken if it is. */
  public static <E> RecordType<E> of(Shape<E> shape) {
    return new RecordType<>(shape, Optional.empty());
  }

  /** An object that another can replace. */
  public static <E> RecordType<E> of(Shape<E> shape, Function<Optional<E>, E> standIn) {
    return new RecordType<>(shape, Optional.of(standIn));
  }

  @Override
  public void check(String field, E value, Checks checks) {}

  @Override
  public Object plain(E value) {
    return shape.plain(value);
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.record(this);
  }
}
