package lampwright.engine.meter;

import java.util.Locale;

/** Numbers as they stand in advice: the same in every language of the machine. */
final class Figures {
  private Figures() {}

  /** So many decimals, rounded. */
  static String fixed(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }

  /** Rounded to a whole number. */
  static String whole(double value) {
    return fixed(value, 0);
  }

  /** A share as a percentage. */
  static String percent(double share) {
    return fixed(100 * share, 0) + " %";
  }
}
