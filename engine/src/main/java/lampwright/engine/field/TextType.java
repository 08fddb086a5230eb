package lampwright.engine.field;

import lampwright.engine.check.Checks;

/**
 * Text that people read.
 *
 * @param maxLength the most characters
 */
public record TextType(int maxLength) implements FieldType<String> {
  /** The name of something. */
  public static final TextType NAME = new TextType(Checks.MAX_NAME_LENGTH);

  @Override
  public void check(String field, String value, Checks checks) {
    checks.length(field, value, maxLength);
  }

  @Override
  public Object plain(String value) {
    return value;
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.text(this);
  }
}
