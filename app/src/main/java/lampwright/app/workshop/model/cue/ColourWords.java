package lampwright.app.workshop.model.cue;

import java.math.BigDecimal;
import java.util.Locale;
import lampwright.app.workshop.edit.NumberText;
import lampwright.app.workshop.words.Texts;
import lampwright.engine.light.Colour;

/** Colours in words. */
public final class ColourWords {
  private ColourWords() {}

  /** A colour as it is given, such as {@code #FFA000} or {@code 3000 K}. */
  public static String of(Colour colour) {
    Texts texts = Texts.of("cue");
    if (colour instanceof Colour.Srgb c) {
      return String.format(Locale.ROOT, "#%02X%02X%02X", c.red(), c.green(), c.blue());
    } else if (colour instanceof Colour.Hue h) {
      return texts.get("words.hue", number(h.degrees()), number(100 * h.saturation()));
    } else if (colour instanceof Colour.Kelvin k) {
      return texts.get("words.kelvin", number(k.kelvin()));
    } else if (colour instanceof Colour.Signal s) {
      return texts.get("words.signal", texts.get("signal." + s.colour().key()));
    }
    Colour.Drive d = (Colour.Drive) colour;
    return texts.get(
        "words.drive",
        number(100 * d.r()),
        number(100 * d.g()),
        number(100 * d.b()),
        number(100 * d.w()));
  }

  private static String number(double value) {
    return NumberText.of(BigDecimal.valueOf(Math.round(value * 10) / 10.0));
  }
}
