package lampwright.engine.field;

import lampwright.engine.check.Checks;

/**
 * A number kept as the nearest double.
 *
 * @param unit what it counts
 * @param min the least
 * @param above whether the least itself, which is 0 then, is refused
 * @param max the greatest
 */
public record NumberType(Unit unit, double min, boolean above, double max)
    implements FieldType<Double> {
  /** From the least to the greatest, both allowed. */
  public NumberType(Unit unit, double min, double max) {
    this(unit, min, false, max);
  }

  /** Above 0, to the greatest. */
  public static NumberType above0(Unit unit, double max) {
    return new NumberType(unit, 0, true, max);
  }

  /** A share, 0 to 1. */
  public static final NumberType SHARE = new NumberType(Unit.SHARE, 0, 1);

  @Override
  public void check(String field, Double value, Checks checks) {
    if (above) {
      checks.above0(field, value, max);
    } else {
      checks.range(field, value, min, max);
    }
  }

  @Override
  public Object plain(Double value) {
    return Checks.canonical(value);
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.number(this);
  }
}
