package lampwright.engine.words;

import java.util.Locale;
import lampwright.engine.check.Checks;
import lampwright.engine.light.Colour;

/** Colours in words. */
public final class ColourWords {
  private ColourWords() {}

  /** A colour as it is given, such as {@code #FFA000} or {@code 3000 K}. */
  public static String of(Colour colour) {
    if (colour instanceof Colour.Srgb c) {
      return String.format(Locale.ROOT, "#%02X%02X%02X", c.red(), c.green(), c.blue());
    } else if (colour instanceof Colour.Hue h) {
      return "hue " + number(h.degrees()) + "\u00b0, " + percent(h.saturation());
    } else if (colour instanceof Colour.Kelvin k) {
      return number(k.kelvin()) + "\u00a0K";
    } else if (colour instanceof Colour.Signal s) {
      return "signal " + s.colour().key().replace('-', ' ');
    }
    Colour.Drive d = (Colour.Drive) colour;
    return "drive "
        + number(100 * d.r())
        + ", "
        + number(100 * d.g())
        + ", "
        + number(100 * d.b())
        + ", "
        + percent(d.w());
  }

  private static String percent(double value) {
    return number(100 * value) + "\u00a0%";
  }

  private static String number(double value) {
    return Checks.plain(Math.round(value * 10) / 10.0);
  }
}
