package lampwright.engine.light;

/** The four emitters that a pixel can have, in the order in which drives are stored. */
public enum EmitterKind {
  RED('R'),
  GREEN('G'),
  BLUE('B'),
  WHITE('W');

  private final char letter;

  EmitterKind(char letter) {
    this.letter = letter;
  }

  /** The capital letter that stands for this emitter in a chain's byte order. */
  public char letter() {
    return letter;
  }

  /** The lower-case letter that stands for this emitter in project files and column names. */
  public String key() {
    return String.valueOf(Character.toLowerCase(letter));
  }
}
