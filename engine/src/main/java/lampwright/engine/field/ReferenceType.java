package lampwright.engine.field;

import java.util.function.Function;
import lampwright.engine.check.Checks;

/**
 * The id of a member of another list of the file. What has that list checks that it exists.
 *
 * @param list the list's path from the root of the file
 * @param id of the value
 */
public record ReferenceType<E>(String list, Function<E, String> id) implements FieldType<E> {
  /** One that the model keeps as the id. */
  public static ReferenceType<String> to(String list) {
    return new ReferenceType<>(list, id -> id);
  }

  @Override
  public void check(String field, E value, Checks checks) {}

  @Override
  public Object plain(E value) {
    return id.apply(value);
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.reference(this);
  }
}
