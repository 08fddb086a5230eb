package lampwright.engine.words;

import java.text.MessageFormat;
import java.util.Arrays;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import lampwright.engine.check.SafeText;

/**
 * Texts of a resource bundle. Numbers in them are written as the project file writes them, whatever
 * the locale, so that what is read can be typed. Immutable.
 */
public final class TextBundle {
  private static final int MAX_LINE = 10_000;

  private final ResourceBundle bundle;

  private TextBundle(ResourceBundle bundle) {
    this.bundle = bundle;
  }

  /** The texts of a bundle, which the module that owns it has to find. */
  public static TextBundle of(ResourceBundle bundle) {
    return new TextBundle(bundle);
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
   * texts, which may be lists.
   */
  public String get(String key, Object... values) {
    Object[] shown = Arrays.stream(values).map(TextBundle::harmless).toArray();
    return new MessageFormat(bundle.getString(key), Locale.ROOT).format(shown);
  }

  private static Object harmless(Object value) {
    return value instanceof String text
        ? text.lines().map(line -> SafeText.text(line, MAX_LINE)).collect(Collectors.joining("\n"))
        : value;
  }
}
