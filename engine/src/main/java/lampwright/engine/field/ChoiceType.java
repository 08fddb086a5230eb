package lampwright.engine.field;

import java.util.List;
import java.util.function.Function;
import lampwright.engine.check.Checks;

/**
 * One of a few.
 *
 * @param group of their words: each is {@code group.key}
 * @param values in the order in which they are listed
 * @param key a value's word in project files
 */
public record ChoiceType<E>(String group, List<E> values, Function<E, String> key)
    implements FieldType<E> {
  public ChoiceType {
    values = List.copyOf(values);
  }

  /** One of the values of an enum. */
  public static <E extends Enum<E>> ChoiceType<E> of(
      String group, Class<E> type, Function<E, String> key) {
    return new ChoiceType<>(group, List.of(type.getEnumConstants()), key);
  }

  /** Their words, in order. */
  public List<String> keys() {
    return values.stream().map(key).toList();
  }

  @Override
  public void check(String field, E value, Checks checks) {}

  @Override
  public Object plain(E value) {
    return key.apply(value);
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.choice(this);
  }
}
