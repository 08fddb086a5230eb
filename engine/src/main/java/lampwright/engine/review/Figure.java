package lampwright.engine.review;

import java.util.Locale;
import lampwright.engine.check.SafeText;

/** One thing that a finding measured or compares with. */
public sealed interface Figure {
  /** The figure as people read it. */
  String text();

  /**
   * A number with its unit.
   *
   * @param value finite
   * @param decimals how many are shown, 0 to 6
   * @param unit printed behind it
   */
  record Quantity(double value, int decimals, Unit unit) implements Figure {
    @Override
    public String text() {
      String number = String.format(Locale.ROOT, "%." + decimals + "f", value);
      return unit == Unit.NONE ? number : number + " " + unit.symbol();
    }
  }

  /**
   * Words: the name of a part, a list of pins, what is in a file. Made harmless, as they may stem
   * from a project.
   *
   * @param text the words
   */
  record Words(String text) implements Figure {
    public Words {
      text = SafeText.text(text, SafeText.MAX_MESSAGE);
    }
  }

  /** A number with its unit. */
  static Figure of(double value, int decimals, Unit unit) {
    return new Quantity(value, decimals, unit);
  }

  /** A pure number, such as a pixel's place. */
  static Figure count(long value) {
    return new Quantity(value, 0, Unit.NONE);
  }

  /** So many of something that can be counted. */
  static Figure count(long value, Unit unit) {
    return new Quantity(value, 0, unit);
  }

  /** A share as a percentage, without decimals. */
  static Figure percent(double share) {
    return new Quantity(100 * share, 0, Unit.PERCENT);
  }

  static Figure volts(double volts) {
    return new Quantity(volts, 2, Unit.VOLTS);
  }

  static Figure milliamps(double milliamps) {
    return new Quantity(milliamps, 0, Unit.MILLIAMPS);
  }

  static Figure amps(double amps) {
    return new Quantity(amps, 2, Unit.AMPS);
  }

  static Figure words(String text) {
    return new Words(text);
  }
}
