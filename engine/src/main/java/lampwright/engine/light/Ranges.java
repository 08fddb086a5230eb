package lampwright.engine.light;

/** The range check that the records of the model share. */
public final class Ranges {
  private Ranges() {}

  /**
   * Refuses a value outside {@code [min, max]}, or not a number.
   *
   * @throws IllegalArgumentException naming the value, what came and what is allowed
   */
  public static void require(String name, double value, double min, double max) {
    // Written so that NaN fails it.
    if (!(value >= min && value <= max)) {
      throw new IllegalArgumentException(
          name + ": " + plain(value) + ": needs " + plain(min) + " to " + plain(max));
    }
  }

  /** A number as people write it: no exponent, no needless decimals. */
  public static String plain(double value) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return Double.toString(value);
    }
    String text = java.math.BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    return text.equals("-0") ? "0" : text;
  }
}
