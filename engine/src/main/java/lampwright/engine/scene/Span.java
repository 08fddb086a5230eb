package lampwright.engine.scene;

/** What a pattern sees as its row of pixels where a track drives several lamps. */
public enum Span {
  /** Each lamp alone. */
  EACH("each"),
  /** All their pixels as one list, in the order in which the track names the lamps. */
  JOINED("joined");

  private final String key;

  Span(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
