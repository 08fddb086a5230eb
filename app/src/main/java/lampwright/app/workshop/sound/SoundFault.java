package lampwright.app.workshop.sound;

import java.util.Locale;

/** Says that a file can't be used as a sound. */
public final class SoundFault extends Exception {
  private static final long serialVersionUID = 1;

  /** Why. */
  public enum Reason {
    /** There is no such file. */
    MISSING,
    /** A link leads out of the project's folder. */
    OUTSIDE,
    /** A folder, a pipe, a device or the like. */
    NOT_REGULAR,
    /** It has more bytes than are read. */
    TOO_LARGE,
    /** It lasts longer than is read. */
    TOO_LONG,
    /** Neither WAV nor AIFF, or in an encoding that is not read. */
    NO_SOUND,
    /** It can't be read, or is damaged. */
    DAMAGED,
    /** Nothing plays sounds on this machine, or it is in use. */
    NO_DEVICE;

    /** The end of the key of its words. */
    public String key() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private final Reason reason;

  SoundFault(Reason reason) {
    super(reason.key());
    this.reason = reason;
  }

  SoundFault(Reason reason, Throwable cause) {
    super(reason.key(), cause);
    this.reason = reason;
  }

  public Reason reason() {
    return reason;
  }
}
