package lampwright.engine.json;

/**
 * A position in a project file.
 *
 * @param line counted from 1
 * @param column in its line, in UTF-16 characters counted from 1
 */
public record Position(int line, int column) {
  /** As people read it: {@code line 5, column 20}. */
  public String words() {
    return "line " + line + ", column " + column;
  }
}
