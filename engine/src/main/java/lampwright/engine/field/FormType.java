package lampwright.engine.field;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import lampwright.engine.check.Checks;

/**
 * Text of a certain form that represents a value.
 *
 * @param key of the words that name the form
 * @param allowed what is accepted, for messages: {@code must be ...}
 * @param pattern a regular expression that every accepted text matches, for the schema; it may
 *     accept more
 * @param examples texts that are accepted, the usual ones first
 * @param longest the most characters of a text
 * @param parse the value of a text; empty if it is not accepted
 * @param text the text of a value
 */
public record FormType<E>(
    String key,
    String allowed,
    String pattern,
    List<String> examples,
    int longest,
    Function<String, Optional<E>> parse,
    Function<E, String> text)
    implements FieldType<E> {
  public FormType {
    examples = List.copyOf(examples);
  }

  @Override
  public void check(String field, E value, Checks checks) {}

  @Override
  public Object plain(E value) {
    return text.apply(value);
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.form(this);
  }
}
