package lampwright.engine.situation;

/** How many conditions of a situation have to be on. */
public enum Join {
  ALL("all"),
  ANY("any");

  private final String key;

  Join(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
