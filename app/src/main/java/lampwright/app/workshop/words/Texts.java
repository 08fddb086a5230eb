package lampwright.app.workshop.words;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Optional;
import java.util.ResourceBundle;

/**
 * The texts of one part of the workshop, from its resource bundle. Numbers in them are written as
 * the project file writes them, whatever the locale, so that what is read can be typed.
 */
public final class Texts {
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

  /** A text with values put in: {@code {0}} and so on; an apostrophe in it is written twice. */
  public String get(String key, Object... values) {
    return new MessageFormat(bundle.getString(key), Locale.ROOT).format(values);
  }
}
