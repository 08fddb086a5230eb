package lampwright.engine.document;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import lampwright.engine.field.Field;

/** What each field of the project file is, in words. */
public final class FieldWords {
  private static final Properties WORDS = load();

  private FieldWords() {}

  /** What a field is, as the end of a table's row; empty where its name says it all. */
  public static Optional<String> about(Field<?, ?> field) {
    return word(field, "");
  }

  /** What is taken where a field is left out, if that follows from other fields. */
  public static Optional<String> usual(Field<?, ?> field) {
    return word(field, ".default");
  }

  /** Whether there are words for a field. */
  public static boolean knows(Field<?, ?> field) {
    return WORDS.containsKey(key(field)) || WORDS.containsKey(field.name());
  }

  private static Optional<String> word(Field<?, ?> field, String suffix) {
    String own = WORDS.getProperty(key(field) + suffix);
    return Optional.ofNullable(own != null ? own : WORDS.getProperty(field.name() + suffix))
        .filter(text -> !text.isEmpty());
  }

  private static String key(Field<?, ?> field) {
    return field.shape().key() + "." + field.name();
  }

  private static Properties load() {
    Properties words = new Properties();
    try (Reader file =
        new InputStreamReader(
            Objects.requireNonNull(FieldWords.class.getResourceAsStream("fields.properties")),
            StandardCharsets.UTF_8)) {
      words.load(file);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    return words;
  }
}
