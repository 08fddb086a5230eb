package lampwright.engine.field;

import lampwright.engine.check.Checks;

/** The id of a member of a list, unique in it. */
public record IdType() implements FieldType<String> {
  @Override
  public void check(String field, String value, Checks checks) {
    checks.id(field, value);
  }

  @Override
  public Object plain(String value) {
    return value;
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.id(this);
  }
}
