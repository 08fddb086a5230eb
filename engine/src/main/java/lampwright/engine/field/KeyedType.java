package lampwright.engine.field;

import java.util.LinkedHashMap;
import java.util.Map;
import lampwright.engine.check.Checks;

/**
 * An object with a member for each of some keys.
 *
 * @param keys which there can be
 * @param each what a member is
 */
public record KeyedType<K extends Comparable<K>, E>(ChoiceType<K> keys, RecordType<E> each)
    implements FieldType<Map<K, E>> {
  @Override
  public void check(String field, Map<K, E> value, Checks checks) {}

  @Override
  public Object plain(Map<K, E> value) {
    Map<String, Object> members = new LinkedHashMap<>();
    for (K key : keys.values()) {
      E member = value.get(key);
      if (member != null) {
        members.put(keys.key().apply(key), each.plain(member));
      }
    }
    return members;
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.keyed(this);
  }
}
