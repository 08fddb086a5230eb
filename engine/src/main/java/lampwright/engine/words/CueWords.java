package lampwright.engine.words;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.LightCharacter;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Steady;
import lampwright.engine.pattern.Tint;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.time.Ratio;

/** What a cue does, in a few words with its rate: {@code Double flash 80/min}. */
public final class CueWords {
  private static final double MINUTE_MS = 60_000;
  private static final MathContext DIGITS = new MathContext(3);

  private static final TextBundle TEXTS =
      TextBundle.of(
          ResourceBundle.getBundle(
              "lampwright.engine.words.cues", Locale.ROOT, CueWords.class.getModule()));

  private final TextBundle texts = TEXTS;

  /** Words that have no state. */
  public CueWords() {}

  /** The words of a cue on a track of so many lamps. */
  public String of(Cue cue, int lamps) {
    String words = of(cue.pattern());
    if (cue.blend() != Blend.COVER) {
      words = texts.get("line.blend", words, texts.get("blend." + cue.blend().key()));
    }
    return lamps > 1 ? texts.get("line.lamps", words, Integer.toString(lamps)) : words;
  }

  /** The words of a pattern. */
  public String of(Pattern pattern) {
    if (pattern instanceof Flash flash) {
      int flashes = flash.flashes();
      String name =
          texts
              .find("line.flash." + flashes)
              .orElseGet(() -> texts.get("line.flash", Integer.toString(flashes)));
      return perMinute(name, pattern);
    } else if (pattern instanceof Indicator || pattern instanceof RotatingBeacon) {
      return perMinute(title(pattern), pattern);
    } else if (pattern instanceof Tint tint) {
      double to = tint.toKelvin().orElse(tint.kelvin());
      return to == tint.kelvin()
          ? texts.get("line.white", kelvin(to))
          : texts.get("line.whites", kelvin(tint.kelvin()), kelvin(to));
    } else if (pattern instanceof Steady) {
      double level = pattern.look().level();
      return level == 1
          ? texts.get("line.steady")
          : texts.get("line.steady.at", number(level * 100));
    } else if (pattern instanceof LightCharacter character) {
      return character.character();
    } else if (pattern instanceof Chase chase) {
      String words = texts.get("line.ms", title(pattern), number(chase.stepMs().doubleValue()));
      return chase.bounce() ? texts.get("line.bounce", words) : words;
    } else if (pattern instanceof ColourCycle cycle) {
      String words = seconds(pattern);
      return cycle.spread() == 0 ? words : texts.get("line.along", words);
    } else if (pattern instanceof Flicker flicker) {
      return texts.get("line.hertz", title(pattern), number(flicker.rateHz().doubleValue()));
    }
    return seconds(pattern);
  }

  /** A kind of pattern as people call it. */
  public static String kind(String kind) {
    return TEXTS.get("kind." + kind);
  }

  /** A choice of a cue as people call it, such as {@code add} of {@code blend}, if it is one. */
  public static Optional<String> choice(String group, String key) {
    return TEXTS.find(group + "." + key);
  }

  private String perMinute(String name, Pattern pattern) {
    return pattern
        .period()
        .map(Ratio::doubleValue)
        .map(ms -> texts.get("line.rate", name, number(MINUTE_MS / ms)))
        .orElse(name);
  }

  private String seconds(Pattern pattern) {
    return pattern
        .period()
        .map(Ratio::doubleValue)
        .map(ms -> texts.get("line.seconds", title(pattern), number(ms / 1000)))
        .orElseGet(() -> title(pattern));
  }

  private static String title(Pattern pattern) {
    String kind = kind(pattern.kind());
    return kind.substring(0, 1).toUpperCase(Locale.ROOT) + kind.substring(1);
  }

  private static String kelvin(double kelvin) {
    return String.format(Locale.ROOT, "%,.0f", kelvin);
  }

  private static String number(double value) {
    BigDecimal rounded = new BigDecimal(value).round(DIGITS);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
