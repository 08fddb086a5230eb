package lampwright.engine.scene;

/** What becomes of the part of a drive that a byte cannot hold. */
public enum Dither {
  /** It is rounded away. */
  OFF("off"),
  /** It is carried into the emitter's next frame. */
  TEMPORAL("temporal");

  private final String key;

  Dither(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
