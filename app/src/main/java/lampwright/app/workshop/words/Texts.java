package lampwright.app.workshop.words;

import java.nio.file.Path;
import java.text.MessageFormat;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Arrays;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import lampwright.engine.check.SafeText;

/**
 * The texts of one part of the workshop, from its resource bundle. Numbers in them are written as
 * the project file writes them, whatever the locale, so that what is read can be typed; dates are
 * in the form of the user's locale and time zone.
 */
public final class Texts {
  private static final int MAX_LINE = 10_000;

  private final ResourceBundle bundle;

  private Texts(ResourceBundle bundle) {
    this.bundle = bundle;
  }

  /**
   * The texts of a part, such as {@code ribbons}.
   *
   * @throws MissingResourceException if there is no such part
   */
  public static Texts of(String part) {
    return new Texts(
        ResourceBundle.getBundle(
            "lampwright.app.workshop." + part, Locale.getDefault(), Texts.class.getModule()));
  }

  /**
   * A text.
   *
   * @throws MissingResourceException if there is none with this key
   */
  public String get(String key) {
    return bundle.getString(key);
  }

  /** A text, if there is one with this key. */
  public Optional<String> find(String key) {
    return bundle.containsKey(key) ? Optional.of(bundle.getString(key)) : Optional.empty();
  }

  /**
   * A text with values put in: {@code {0}} and so on; an apostrophe in it is written twice. Names
   * come from files: nothing in them turns the direction of writing or hides. Line feeds stay in
   * texts, which may be lists, and not in paths.
   */
  public String get(String key, Object... values) {
    Object[] shown = Arrays.stream(values).map(Texts::harmless).toArray();
    return new MessageFormat(bundle.getString(key), Locale.ROOT).format(shown);
  }

  private static Object harmless(Object value) {
    if (value instanceof Instant instant) {
      return inUsersForm(instant);
    }
    if (value instanceof Path path) {
      return SafeText.text(path.toString(), SafeText.MAX_MESSAGE);
    }
    return value instanceof String text
        ? text.lines().map(line -> SafeText.text(line, MAX_LINE)).collect(Collectors.joining("\n"))
        : value;
  }

  // A moment is read, not typed.
  private static String inUsersForm(Instant instant) {
    return DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT)
        .withLocale(Locale.getDefault(Locale.Category.FORMAT))
        .withZone(ZoneId.systemDefault())
        .format(instant);
  }
}
