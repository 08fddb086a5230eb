package lampwright.engine.field;

import java.math.BigDecimal;
import java.util.function.LongFunction;
import lampwright.engine.check.Checks;

/**
 * A whole number.
 *
 * @param unit what it counts
 * @param min the least
 * @param max the greatest
 * @param of makes the model's number of one that is in range
 */
public record WholeType<N extends Number>(Unit unit, long min, long max, LongFunction<N> of)
    implements FieldType<N> {
  /** A whole number that the model keeps as an int. */
  public static WholeType<Integer> ofInt(Unit unit, int min, int max) {
    return new WholeType<>(unit, min, max, value -> Math.toIntExact(clamped(value)));
  }

  /** A whole number that the model keeps as a long. */
  public static WholeType<Long> ofLong(Unit unit, long min, long max) {
    return new WholeType<>(unit, min, max, value -> value);
  }

  @Override
  public void check(String field, N value, Checks checks) {
    checks.range(field, BigDecimal.valueOf(value.longValue()), min, max);
  }

  @Override
  public Object plain(N value) {
    return BigDecimal.valueOf(value.longValue());
  }

  // What no int holds is refused as the nearest that one holds.
  private static long clamped(long value) {
    return Math.max(Integer.MIN_VALUE, Math.min(Integer.MAX_VALUE, value));
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.whole(this);
  }
}
