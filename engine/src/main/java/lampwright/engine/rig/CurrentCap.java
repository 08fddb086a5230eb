package lampwright.engine.rig;

/** How the supply's limit bounds the light. */
public enum CurrentCap {
  /** Not at all. */
  OFF("off"),
  /** One factor for a whole scene, so that its worst frame meets the limit. */
  SCENE("scene"),
  /** Each frame over the limit is scaled to meet it. */
  FRAME("frame");

  private final String key;

  CurrentCap(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
