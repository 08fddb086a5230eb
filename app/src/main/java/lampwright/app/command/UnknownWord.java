package lampwright.app.command;

import java.util.Collection;
import lampwright.engine.check.SafeText;
import lampwright.engine.check.Suggestion;

/** The message about a word of the command line that is none of those known. */
final class UnknownWord {
  private UnknownWord() {}

  /** As in {@code --scene: wolk: must be one of walk, ramps; did you mean "walk"?}. */
  static String of(String option, String word, Collection<String> known) {
    return of(option, word, known, known);
  }

  /**
   * The same.
   *
   * @param understood the words known, and others that mean one of them, for the word that was
   *     perhaps meant
   */
  static String of(
      String option, String word, Collection<String> known, Collection<String> understood) {
    return option
        + ": "
        + SafeText.text(word)
        + ": must be "
        + (known.size() == 1 ? "" : "one of ")
        + String.join(", ", known)
        + Suggestion.of(word, understood)
            .map(near -> "; did you mean \"" + near + "\"?")
            .orElse("");
  }
}
