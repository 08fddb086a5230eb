package lampwright.engine.project;

/** How much a problem matters. */
public enum Severity {
  /** The project cannot be used. */
  ERROR("error"),
  /** The project can be used, but hardly does what its author wants. */
  CAUTION("caution");

  private final String key;

  Severity(String key) {
    this.key = key;
  }

  /** The word for this in messages. */
  public String key() {
    return key;
  }
}
