package lampwright.engine.light;

/** How sRGB and hue colours become drives. */
public enum ColourMatching {
  /** Each code value drives its emitter through the curve. */
  DIRECT("direct"),
  /** The colour's chromaticity is mixed from the emitters' own. */
  EMITTERS("emitters");

  private final String key;

  ColourMatching(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
