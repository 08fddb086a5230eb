package lampwright.engine.meter;

/** How much an advice matters, the gravest first. */
public enum Weight {
  /** It may hurt someone or destroy something. */
  HARM("harm"),
  /** The hardware will not do it. */
  FAILS("fails"),
  /** It works, but not as on the real one. */
  LOOKS("looks");

  private final String key;

  Weight(String key) {
    this.key = key;
  }

  /** The word for this in JSON. */
  public String key() {
    return key;
  }
}
