package lampwright.engine.meter;

import java.util.Locale;

/** Numbers as texts have them: the same in every language of the machine. */
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

  /** Rounded to one decimal, which is left out where it is 0. */
  static String short1(double value) {
    String fixed = fixed(value, 1);
    return fixed.endsWith(".0") ? fixed.substring(0, fixed.length() - 2) : fixed;
  }
}
