package lampwright.engine.json;

import java.util.Optional;

/**
 * One thing wrong in a project file. What stems from the file is made harmless: no control
 * characters, and short.
 *
 * @param path of the field, such as {@code scenes[0].tracks[2].lamps[0]}; empty for the whole file
 * @param value what came, as text
 * @param allowed what would be accepted, as the end of a sentence: {@code must be between 0 and 1}
 * @param position where it is in the file
 * @param suggestion a name that was perhaps meant
 */
public record Problem(
    String path, String value, String allowed, Position position, Optional<String> suggestion) {
  /** The problem in one line: place, what came, where, what is allowed. */
  public String text() {
    return (path.isEmpty() ? "" : path + ": ")
        + value
        + " at "
        + position.words()
        + ": "
        + allowed
        + suggestion.map(name -> "; did you mean \"" + name + "\"?").orElse("");
  }
}
