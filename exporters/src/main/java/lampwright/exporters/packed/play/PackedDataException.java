package lampwright.exporters.packed.play;

/** Packed data that can't be played. */
public final class PackedDataException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  /** What is wrong with the data. */
  public enum Damage {
    /** No packed data at all. */
    NOT_PACKED,
    /** A later version of the format, or flags that this one doesn't know. */
    VERSION,
    /** Shorter or longer than it says. */
    SIZE,
    /** The checksum differs. */
    CHECKSUM,
    /** The checksum is right but the contents break the format's rules. */
    CONTENTS
  }

  private final Damage damage;

  PackedDataException(Damage damage, String message) {
    super(message);
    this.damage = damage;
  }

  /** What is wrong. */
  public Damage damage() {
    return damage;
  }
}
