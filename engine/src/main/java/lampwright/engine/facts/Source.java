package lampwright.engine.facts;

import java.util.Locale;

/** How surely a number is known. */
public enum Source {
  /** The document named holds the value, and that was looked up. */
  PUBLISHED("published"),
  /** The document named is where the value should be; that was not looked up. */
  MEMORY("estimate"),
  /** Common practice, or a guess from like parts, as the document says. */
  PRACTICE("estimate"),
  /** Our own choice, where others would do as well; the document says why. */
  OURS("our choice"),
  /** Worked out from other numbers, as the document says. */
  COMPUTED("computed");

  private final String words;

  Source(String words) {
    this.words = words;
  }

  /** The word for it in data files. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The word for it to people. */
  public String words() {
    return words;
  }

  /** The source of a word in a data file. */
  static Source of(String key) {
    for (Source source : values()) {
      if (source.key().equals(key)) {
        return source;
      }
    }
    throw new IllegalArgumentException(
        key + ": must be published, memory, practice, ours or computed");
  }
}
