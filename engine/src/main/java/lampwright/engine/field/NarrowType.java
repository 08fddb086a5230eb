package lampwright.engine.field;

import lampwright.engine.check.Checks;

/**
 * A value of a wider type of which only some are accepted.
 *
 * @param wide the wider type
 * @param narrow what is accepted
 * @param other what else is called in messages
 * @param allowed what is accepted, for messages: {@code must be ...}
 */
public record NarrowType<E, W extends E>(
    UnionType<E> wide, Class<W> narrow, String other, String allowed) implements FieldType<W> {
  @Override
  public void check(String field, W value, Checks checks) {}

  @Override
  public Object plain(W value) {
    return wide.plain(value);
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.narrow(this);
  }
}
