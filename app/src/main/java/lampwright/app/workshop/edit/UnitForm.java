package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import lampwright.engine.field.Unit;

/**
 * How forms show a unit.
 *
 * @param key of its words, {@code unit.KEY}; empty if it has none
 * @param places by which the point of a number moves to the right on its way to the screen: 2 for
 *     shares, which are 0 to 1 in files and percentages in forms
 * @param step by which keys and the wheel change a number of it, as shown
 * @param first what an optional number of it begins with, as shown, within its range
 */
record UnitForm(String key, int places, BigDecimal step, BigDecimal first) {
  /**
   * The form of numbers up to a greatest.
   *
   * @param max a supply is changed in greater steps than an LED
   */
  static UnitForm of(Unit unit, double max) {
    return switch (unit) {
      case NONE -> form("", "0.1", "0");
      case COORDINATE -> form("", "0.001", "0.3");
      case SHARE -> percent("5", "90");
      case MILLISECONDS -> form("ms", "10", "100");
      case MICROSECONDS -> form("microseconds", "10", "100");
      case NANOSECONDS -> form("nanoseconds", "10", "300");
      case HERTZ -> form("hertz", "0.5", "8");
      case FRAMES_PER_SECOND -> form("perSecond", "1", "50");
      case PER_MINUTE -> form("perMinute", "1", "90");
      case DEGREES -> form("degrees", "5", "120");
      case KELVIN -> form("kelvin", "50", "6500");
      case MILLICANDELA -> form("mcd", "10", "400");
      case VOLTS -> form("volts", "0.1", "5");
      case AMPS -> form("amps", "0.5", "2");
      case MILLIAMPS -> form("milliamps", max > 10_000 ? "50" : "1", "20");
      case MILLIAMP_HOURS -> form("milliampHours", "100", "2000");
      case MEGAHERTZ -> form("megahertz", "1", "16");
      case MILLIMETRES -> form("mm", "10", "1000");
      case SQUARE_MILLIMETRES -> form("mm2", "0.05", "0.1");
      case GAUGE -> form("gauge", "1", "24");
      case TURNS -> percent("1", "0");
    };
  }

  /** A number of the model as forms show it. */
  BigDecimal shown(BigDecimal held) {
    return held.movePointRight(places);
  }

  /** A number of a form as the model holds it. */
  BigDecimal held(BigDecimal shown) {
    return shown.movePointLeft(places);
  }

  private static UnitForm form(String key, String step, String first) {
    return new UnitForm(key, 0, new BigDecimal(step), new BigDecimal(first));
  }

  private static UnitForm percent(String step, String first) {
    return new UnitForm("percent", 2, new BigDecimal(step), new BigDecimal(first));
  }
}
