package lampwright.exporters;

/**
 * Something to know before an export is used.
 *
 * @param what what is the case, with its figures
 * @param remedy what can be done
 */
public record Caution(String what, String remedy) {
  /** Both in one line. */
  @Override
  public String toString() {
    return what + ": " + remedy;
  }
}
