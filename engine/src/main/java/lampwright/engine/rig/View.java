package lampwright.engine.rig;

/** A side from which the model is drawn. */
public enum View {
  FRONT("front"),
  SIDE("side"),
  REAR("rear"),
  TOP("top");

  private final String key;

  View(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
