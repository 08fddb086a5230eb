package lampwright.engine.check;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * How many members a list of a project may have. It is given once, at the record that has the list;
 * the reader asks it before it makes anything of the members.
 *
 * @param min the fewest
 * @param max the most
 * @param what they are called, many of them
 */
public record ListLimit(int min, int max, String what) {
  /** What is wrong with so many. */
  public Optional<Fault> fault(String field, int count) {
    return count >= min && count <= max
        ? Optional.empty()
        : Optional.of(new Fault(field, count + " " + what, allowed()));
  }

  private String allowed() {
    if (min == max) {
      return "must be exactly " + Checks.limit(max);
    }
    return min == 0
        ? "must be at most " + Checks.limit(max)
        : Checks.between(BigDecimal.valueOf(min), BigDecimal.valueOf(max));
  }
}
