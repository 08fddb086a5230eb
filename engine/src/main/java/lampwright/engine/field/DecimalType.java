package lampwright.engine.field;

import java.math.BigDecimal;
import lampwright.engine.check.Checks;

/**
 * A number kept as the exact decimal that is written.
 *
 * @param unit what it counts
 * @param min the least
 * @param above whether the least itself, which is 0 then, is refused
 * @param max the greatest
 */
public record DecimalType(Unit unit, long min, boolean above, long max)
    implements FieldType<BigDecimal> {
  /** From the least to the greatest, both allowed. */
  public DecimalType(Unit unit, long min, long max) {
    this(unit, min, false, max);
  }

  /** Above 0, to the greatest. */
  public static DecimalType above0(Unit unit, long max) {
    return new DecimalType(unit, 0, true, max);
  }

  @Override
  public void check(String field, BigDecimal value, Checks checks) {
    if (above) {
      checks.above0(field, value, max);
    } else {
      checks.range(field, value, min, max);
    }
  }

  @Override
  public Object plain(BigDecimal value) {
    return Checks.canonical(value);
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.decimal(this);
  }
}
