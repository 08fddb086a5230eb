package lampwright.engine.light;

/** The four emitters that a pixel can have, in the order in which drives are stored. */
public enum EmitterKind {
  RED('R', 0),
  GREEN('G', 1),
  BLUE('B', 2),
  WHITE('W', 3);

  private final char letter;
  private final int slot;

  EmitterKind(char letter, int slot) {
    this.letter = letter;
    this.slot = slot;
  }

  /** Its place among the {@link Mixer#SLOTS} drives of a package. */
  public int slot() {
    return slot;
  }

  /** The capital letter that represents this emitter in a chain's byte order. */
  public char letter() {
    return letter;
  }

  /** The lower-case letter that represents this emitter in project files and column names. */
  public String key() {
    return String.valueOf(Character.toLowerCase(letter));
  }
}
