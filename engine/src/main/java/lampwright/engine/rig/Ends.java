package lampwright.engine.rig;

/** Where a chain of pixels is fed. */
public enum Ends {
  /** Before its first pixel. */
  ONE("one"),
  /** Before its first pixel and behind its last. */
  BOTH("both");

  private final String key;

  Ends(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
