package lampwright.engine.facts;

import java.util.Objects;

/**
 * The numbers of the trade but for those of pixel types and controllers, from the table
 * trade-numbers.csv. Whoever reckons with one asks here; docs/numbers.md lists them.
 */
public final class TradeNumbers {
  private static final NumberTable TABLE =
      NumberTable.read(
          Objects.requireNonNull(TradeNumbers.class.getResourceAsStream("trade-numbers.csv")));

  private TradeNumbers() {}

  /** All of them. */
  public static NumberTable table() {
    return TABLE;
  }

  /** One entry; it must be in the table. */
  public static SourcedNumber get(String subject, String item) {
    return TABLE.get(subject, item);
  }

  /** One number; it must be in the table. */
  public static double number(String subject, String item) {
    return get(subject, item).number();
  }
}
