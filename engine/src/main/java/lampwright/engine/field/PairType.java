package lampwright.engine.field;

import java.math.BigDecimal;
import java.util.List;
import lampwright.engine.check.Checks;

/**
 * A number, or the least and the greatest of a range. The value is a list of one or two numbers;
 * the record that has it checks them.
 *
 * @param unit what they count
 * @param min the least
 * @param max the greatest
 * @param alone whether a number alone is accepted
 */
public record PairType(Unit unit, double min, double max, boolean alone)
    implements FieldType<List<Double>> {
  @Override
  public void check(String field, List<Double> value, Checks checks) {}

  @Override
  public Object plain(List<Double> value) {
    List<BigDecimal> numbers = value.stream().map(v -> Checks.canonical((double) v)).toList();
    return numbers.size() == 1 ? numbers.get(0) : numbers;
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.pair(this);
  }
}
