package lampwright.engine.field;

import lampwright.engine.check.Checks;

/** True or false. */
public record FlagType() implements FieldType<Boolean> {
  @Override
  public void check(String field, Boolean value, Checks checks) {}

  @Override
  public Object plain(Boolean value) {
    return value;
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.flag(this);
  }
}
