package lampwright.app.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/**
 * A plain command line: one file and some of a command's flags, each at most once and written out.
 * It means here what it means to the library that reads command lines, whose own start takes longer
 * than that of all the rest; whatever else a command line has is left to the library.
 *
 * @param file as named
 * @param flags those that are given
 */
record PlainWords(String file, Set<String> flags) {
  /**
   * The words after that of the command; empty if they are not as plain as that.
   *
   * @param known the flags of the command, such as {@code --json}
   */
  static Optional<PlainWords> of(String[] arguments, Set<String> known) {
    String file = "";
    Set<String> flags = new HashSet<>();
    for (int i = 1; i < arguments.length; i++) {
      String word = arguments[i];
      if (known.contains(word)) {
        if (!flags.add(word)) {
          return Optional.empty();
        }
      } else if (!file.isEmpty() || !plain(word)) {
        return Optional.empty();
      } else {
        file = word;
      }
    }
    return file.isEmpty() ? Optional.empty() : Optional.of(new PlainWords(file, flags));
  }

  /** Whether a word is a file's name: no option, no file of arguments, and not quoted. */
  static boolean plain(String word) {
    try {
      return !Path.of(word).toString().isEmpty() && "-@\"'".indexOf(word.charAt(0)) < 0;
    } catch (InvalidPathException noName) {
      return false;
    }
  }
}
