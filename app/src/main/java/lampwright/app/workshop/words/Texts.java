package lampwright.app.workshop.words;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Arrays;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.ResourceBundle;
import lampwright.engine.check.SafeText;
import lampwright.engine.words.TextBundle;

/**
 * The texts of one part of the workshop, from its resource bundle. Numbers in them are written as
 * the project file writes them, whatever the locale, so that what is read can be typed; dates are
 * in the form of the user's locale and time zone.
 */
public final class Texts {
  private final TextBundle bundle;

  private Texts(TextBundle bundle) {
    this.bundle = bundle;
  }

  /**
   * The texts of a part, such as {@code ribbons}.
   *
   * @throws MissingResourceException if there is no such part
   */
  public static Texts of(String part) {
    return new Texts(
        TextBundle.of(
            ResourceBundle.getBundle(
                "lampwright.app.workshop." + part, Locale.getDefault(), Texts.class.getModule())));
  }

  /**
   * A text.
   *
   * @throws MissingResourceException if there is none with this key
   */
  public String get(String key) {
    return bundle.get(key);
  }

  /** A text, if there is one with this key. */
  public Optional<String> find(String key) {
    return bundle.find(key);
  }

  /**
   * A text with values put in, as {@link TextBundle#get(String, Object...)} does. Paths are in one
   * line.
   */
  public String get(String key, Object... values) {
    return bundle.get(key, Arrays.stream(values).map(Texts::shown).toArray());
  }

  private static Object shown(Object value) {
    if (value instanceof Instant instant) {
      return inUsersForm(instant);
    }
    if (value instanceof Path path) {
      return SafeText.text(path.toString(), SafeText.MAX_MESSAGE);
    }
    return value;
  }

  // A moment is read, not typed.
  private static String inUsersForm(Instant instant) {
    return DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT)
        .withLocale(Locale.getDefault(Locale.Category.FORMAT))
        .withZone(ZoneId.systemDefault())
        .format(instant);
  }
}
