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

  /** The capital letter that stands for this emitter in a chain's byte order. */
  public char letter() {
    return letter;
  }

  /** The lower-case letter that stands for this emitter in project files and column names. */
  public String key() {
    return String.valueOf(Character.toLowerCase(letter));
  }

  /** The place of this emitter's drive in a package's four. */
  public int slot() {
    return slot;
  }
}
