package lampwright.engine.json;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * JSON to write. What fits in 100 columns, with its indentation, key and comma, is on one line; of
 * what does not, each member is on a line of its own.
 */
sealed interface Out {
  int COLUMNS = 100;
  int INDENT = 2;

  /** Characters it takes on one line. */
  int width();

  /** Appends it on one line. */
  void flat(StringBuilder to);

  /** Appends it where a line has room for so many characters, of lines indented so far. */
  default void lay(StringBuilder to, int indent, int room) {
    flat(to);
  }

  /** A value as {@link lampwright.engine.field.FieldType#plain} gives it. */
  static Out of(Object plain) {
    if (plain instanceof Map<?, ?> fields) {
      Group object = Group.object();
      fields.forEach((name, value) -> object.put((String) name, of(value)));
      return object;
    }
    if (plain instanceof List<?> members) {
      Group list = Group.list();
      members.forEach(member -> list.add(of(member)));
      return list;
    }
    if (plain instanceof String text) {
      return new Word(JsonText.quoted(text));
    }
    return new Word(plain instanceof BigDecimal number ? number.toPlainString() : plain.toString());
  }

  /** A text, number or word as JSON writes it. */
  record Word(String json) implements Out {
    @Override
    public int width() {
      return json.length();
    }

    @Override
    public void flat(StringBuilder to) {
      to.append(json);
    }
  }

  /** An object or list; a list's members have empty keys. */
  final class Group implements Out {
    private final String brackets;
    private final List<String> keys = new ArrayList<>();
    private final List<Out> values = new ArrayList<>();
    private int width = 2;

    private Group(String brackets) {
      this.brackets = brackets;
    }

    static Group object() {
      return new Group("{}");
    }

    static Group list() {
      return new Group("[]");
    }

    /** Adds a member of an object. */
    Group put(String name, Out value) {
      return member(JsonText.quoted(name) + ": ", value);
    }

    /** Adds a member of a list. */
    Group add(Out value) {
      return member("", value);
    }

    private Group member(String key, Out value) {
      width = Math.addExact(width, (keys.isEmpty() ? 0 : 2) + key.length() + value.width());
      keys.add(key);
      values.add(value);
      return this;
    }

    boolean isEmpty() {
      return keys.isEmpty();
    }

    @Override
    public int width() {
      return width;
    }

    @Override
    public void flat(StringBuilder to) {
      to.append(brackets.charAt(0));
      for (int i = 0; i < keys.size(); i++) {
        to.append(i == 0 ? "" : ", ").append(keys.get(i));
        values.get(i).flat(to);
      }
      to.append(brackets.charAt(1));
    }

    @Override
    public void lay(StringBuilder to, int indent, int room) {
      if (width <= room || keys.isEmpty()) {
        flat(to);
        return;
      }
      int inner = indent + INDENT;
      to.append(brackets.charAt(0));
      for (int i = 0; i < keys.size(); i++) {
        to.append(i == 0 ? "\n" : ",\n").append(" ".repeat(inner)).append(keys.get(i));
        int comma = i < keys.size() - 1 ? 1 : 0;
        values.get(i).lay(to, inner, COLUMNS - inner - keys.get(i).length() - comma);
      }
      to.append('\n').append(" ".repeat(indent)).append(brackets.charAt(1));
    }
  }
}
