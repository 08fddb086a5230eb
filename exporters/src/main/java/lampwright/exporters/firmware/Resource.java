package lampwright.exporters.firmware;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text that comes with the program; words in it such as {@code @MCU@} give way to a project's.
 */
final class Resource {
  private static final Pattern KIND = Pattern.compile("^(avr|hook|rp2040)/");
  private static final Pattern PLACE = Pattern.compile("@([A-Z_]+)@");

  private Resource() {}

  static String text(String name) throws IOException {
    try (InputStream in = Resource.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new FileNotFoundException(name + ": missing in the program");
      }
      return new String(in.readAllBytes(), UTF_8);
    }
  }

  /** The text with its places filled. A place without words stays as it is. */
  static String filled(String name, Map<String, String> words) throws IOException {
    return PLACE
        .matcher(text(name))
        .replaceAll(
            place -> Matcher.quoteReplacement(words.getOrDefault(place.group(1), place.group())));
  }

  /** The name in the exported folder. */
  static String exportedName(String name) {
    return KIND.matcher(name).replaceFirst("");
  }
}
