package lampwright.engine.field;

import java.util.List;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;

/**
 * A list.
 *
 * @param each what a member is
 * @param limit how many there may be
 */
public record ListType<E>(FieldType<E> each, ListLimit limit) implements FieldType<List<E>> {
  @Override
  public void check(String field, List<E> value, Checks checks) {
    checks.size(field, value, limit);
    for (int i = 0; i < value.size(); i++) {
      each.check(field + "[" + i + "]", value.get(i), checks);
    }
  }

  @Override
  public Object plain(List<E> value) {
    return value.stream().map(each::plain).toList();
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.list(this);
  }
}
