package lampwright.engine.check;

/**
 * One value that the model refuses.
 *
 * @param field the field's name, or its path below the record that was checked, as project files
 *     write it: {@code level}, {@code frames[2].atMs}
 * @param value what came, as text
 * @param allowed what would be accepted, as the end of a sentence: {@code must be between 0 and 1}
 */
public record Fault(String field, String value, String allowed) {
  /** The fault in one line: place, what came, what is allowed. */
  @Override
  public String toString() {
    return field + ": " + value + ": " + allowed;
  }
}
