package lampwright.engine.field;

import com.google.common.base.CharMatcher;
import com.google.common.base.Splitter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lampwright.engine.check.Checks;

/**
 * What the path of a file may be that a project names: it leads from the project's folder to a file
 * inside of it, with {@code /} between folders.
 *
 * @param key of the words that name the form
 * @param endings that the name may have, in small or capital letters, each with its dot
 * @param examples paths that are accepted
 */
public record InnerPath(String key, List<String> endings, List<String> examples) {
  public static final int MAX_LENGTH = 300;

  // A colon is a drive or a hidden stream to some file systems.
  private static final CharMatcher BARRED =
      CharMatcher.javaIsoControl()
          .or(CharMatcher.anyOf("\\:"))
          .or(CharMatcher.inRange('\u2028', '\u2029'));
  private static final Set<String> NO_NAMES = Set.of("", ".", "..");

  public InnerPath {
    endings = List.copyOf(endings);
    examples = List.copyOf(examples);
  }

  /**
   * Where such a path is on this machine. Throws {@code InvalidPathException} where it can't be.
   */
  public static Path in(Path folder, String file) {
    return folder.resolve(file.replace("/", folder.getFileSystem().getSeparator()));
  }

  /** The type of a field that holds one; what is held is checked by {@link #check}. */
  public FieldType<String> type() {
    return new FormType<>(
        key,
        "must be a string",
        "^(?=.{0,"
            + MAX_LENGTH
            + "}$)(?!(.*/)?\\.{0,2}(/|$))"
            + "[^\\u0000-\\u001F\\u007F-\\u009F\\u2028\\u2029\\\\:]*\\.("
            + endings.stream().map(InnerPath::anyCase).collect(Collectors.joining("|"))
            + ")$",
        examples,
        MAX_LENGTH,
        Optional::of,
        file -> file);
  }

  /** Adds what is wrong with a path. */
  public void check(String field, String file, Checks checks) {
    if (file.length() > MAX_LENGTH) {
      checks.add(
          field, file.length() + " characters", "must have at most " + MAX_LENGTH + " characters");
    } else if (BARRED.matchesAnyOf(file)) {
      checks.add(field, file, "must be a path with /, without \\, : or control characters");
    } else if (Splitter.on('/').splitToStream(file).anyMatch(NO_NAMES::contains)) {
      checks.add(field, file, "must be a relative path inside the project folder");
    } else {
      checks.that(accepts(file), field, file, "must end in " + words());
    }
  }

  /** Whether a name ends as it may. */
  public boolean accepts(String name) {
    String small = name.toLowerCase(Locale.ROOT);
    return endings.stream().anyMatch(small::endsWith);
  }

  private String words() {
    int last = endings.size() - 1;
    return String.join(", ", endings.subList(0, last)) + " or " + endings.get(last);
  }

  private static String anyCase(String ending) {
    return ending
        .substring(1)
        .chars()
        .mapToObj(c -> "[" + (char) c + Character.toUpperCase((char) c) + "]")
        .collect(Collectors.joining());
  }
}
