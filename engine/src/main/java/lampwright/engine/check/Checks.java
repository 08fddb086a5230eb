package lampwright.engine.check;

import com.google.common.base.CharMatcher;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * Collects what is wrong with the values of one record, so that all of it is reported at once. A
 * file has many records and few faults, so texts are made for faults alone.
 *
 * <p>A compact constructor checks each component and ends with {@link #done()}.
 */
public final class Checks {
  /**
   * How many decimals a decimal number may have: enough for a third, few enough to compute with.
   */
  public static final int MAX_DECIMALS = 40;

  /** The longest text, in characters, that a name may have. */
  public static final int MAX_NAME_LENGTH = 200;

  private static final CharMatcher ID_CHARACTERS =
      CharMatcher.inRange('a', 'z').or(CharMatcher.inRange('0', '9')).or(CharMatcher.is('-'));

  private final String subject;
  private final List<Fault> faults = new ArrayList<>();

  private Checks(String subject) {
    this.subject = subject;
  }

  /** Starts the checks of a record, named as a builder would name it. */
  public static Checks of(String subject) {
    return new Checks(subject);
  }

  /**
   * Refuses one value outside {@code [min, max]}, or not a number.
   *
   * @throws IllegalArgumentException naming the value, what came and what is allowed
   */
  public static void require(String name, double value, double min, double max) {
    if (!(value >= min && value <= max)) {
      throw new IllegalArgumentException(name + ": " + plain(value) + ": " + between(min, max));
    }
  }

  /** Refuses a value outside {@code [min, max]}, or not a number. */
  public Checks range(String field, double value, double min, double max) {
    // Written so that NaN fails it.
    return value >= min && value <= max ? this : add(field, plain(value), between(min, max));
  }

  /** Refuses a decimal outside {@code [min, max]}, or with more decimals than can be computed. */
  public Checks range(String field, BigDecimal value, long min, long max) {
    boolean inside =
        value.compareTo(BigDecimal.valueOf(min)) >= 0
            && value.compareTo(BigDecimal.valueOf(max)) <= 0;
    if (inside && value.scale() > MAX_DECIMALS) {
      return add(field, shortText(value), "must have at most " + MAX_DECIMALS + " decimals");
    }
    return inside
        ? this
        : add(field, shortText(value), between(BigDecimal.valueOf(min), BigDecimal.valueOf(max)));
  }

  /** Refuses a decimal that is not above 0, is past {@code max}, or has too many decimals. */
  public Checks above0(String field, BigDecimal value, long max) {
    boolean inside = value.signum() > 0 && value.compareTo(BigDecimal.valueOf(max)) <= 0;
    return inside
        ? range(field, value, 0, max)
        : add(field, shortText(value), above0(BigDecimal.valueOf(max)));
  }

  /** Refuses a number that is not above 0, is past {@code max}, or is none. */
  public Checks above0(String field, double value, double max) {
    return value > 0 && value <= max
        ? this
        : add(field, plain(value), above0(BigDecimal.valueOf(max)));
  }

  /** Refuses anything but 1 to 40 lower-case letters, digits and hyphens. */
  public Checks id(String field, String value) {
    boolean good = !value.isEmpty() && value.length() <= 40 && ID_CHARACTERS.matchesAllOf(value);
    return that(good, field, value, "must have 1 to 40 lower-case letters, digits or hyphens");
  }

  /** Refuses a text that is too long. */
  public Checks length(String field, String value, int max) {
    return value.length() <= max
        ? this
        : add(field, value.length() + " characters", "must have at most " + max + " characters");
  }

  /** Refuses a list with fewer or more members. */
  public Checks size(String field, Collection<?> list, ListLimit limit) {
    limit.fault(field, list.size()).ifPresent(faults::add);
    return this;
  }

  /** Refuses a value unless the condition holds. */
  public Checks that(boolean condition, String field, String value, String allowed) {
    return condition ? this : add(field, value, allowed);
  }

  /** Refuses members of a list whose id an earlier member has. */
  public <T> Checks uniqueIds(String list, List<T> members, Function<T, String> id) {
    return unique(list, "id", members, id);
  }

  /** The members of a list differ in a field. */
  public <T> Checks unique(String list, String field, List<T> members, Function<T, String> value) {
    Map<String, Integer> first = new HashMap<>();
    for (int i = 0; i < members.size(); i++) {
      Integer earlier = first.putIfAbsent(value.apply(members.get(i)), i);
      if (earlier != null) {
        add(
            list + "[" + i + "]." + field,
            value.apply(members.get(i)),
            "must be unique; " + list + "[" + earlier + "] has the same");
      }
    }
    return this;
  }

  /** Adds a fault. */
  public Checks add(String field, String value, String allowed) {
    faults.add(new Fault(field, value, allowed));
    return this;
  }

  /** Adds faults found elsewhere. */
  public Checks addAll(Collection<Fault> found) {
    faults.addAll(found);
    return this;
  }

  /** What was refused so far. */
  public List<Fault> faults() {
    return List.copyOf(faults);
  }

  /**
   * Ends the checks.
   *
   * @throws InvalidModelException if anything was refused
   */
  public void done() {
    if (!faults.isEmpty()) {
      throw new InvalidModelException(subject, faults);
    }
  }

  /** A number as people write it: no exponent, no needless decimals. */
  public static String plain(double value) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return Double.toString(value);
    }
    return shortText(BigDecimal.valueOf(value));
  }

  /**
   * A number in full, without exponent or needless zeros: reading it gives the same number.
   *
   * @throws NumberFormatException if it is not finite
   */
  public static String exact(double value) {
    return canonical(value).toPlainString();
  }

  /**
   * The canonical decimal of a number: reading it gives the same number.
   *
   * @throws NumberFormatException if it is not finite
   */
  public static BigDecimal canonical(double value) {
    return canonical(BigDecimal.valueOf(value));
  }

  /** The canonical form of a decimal: no trailing zeros, so that equal numbers are equal values. */
  public static BigDecimal canonical(BigDecimal value) {
    return value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
  }

  // A hostile exponent must not become a million digits in a message.
  private static String shortText(BigDecimal value) {
    if (value.signum() == 0) {
      return "0";
    }
    boolean isShort = Math.abs((long) value.scale()) <= 60 && value.precision() <= 60;
    return isShort ? value.stripTrailingZeros().toPlainString() : value.round(SHORT).toString();
  }

  private static final java.math.MathContext SHORT = new java.math.MathContext(8);

  /** A limit as messages write it: with a comma for thousands. */
  public static String limit(BigDecimal value) {
    String plain = shortText(value);
    int point = plain.indexOf('.');
    String whole = point < 0 ? plain : plain.substring(0, point);
    return whole.replaceAll("(?<=\\d)(?=(\\d{3})+$)", ",") + plain.substring(whole.length());
  }

  /** The same of a whole number. */
  public static String limit(long value) {
    return limit(BigDecimal.valueOf(value));
  }

  /** The words for values from the least to the greatest, both allowed. */
  static String between(BigDecimal min, BigDecimal max) {
    return "must be between " + limit(min) + " and " + limit(max);
  }

  private static String between(double min, double max) {
    return between(BigDecimal.valueOf(min), BigDecimal.valueOf(max));
  }

  private static String above0(BigDecimal max) {
    return "must be greater than 0 and at most " + limit(max);
  }
}
