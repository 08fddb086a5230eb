package lampwright.exporters.packed.play;

/** Where one lamp is in its program. Fields as in the C player. */
public final class Voice {
  /** First column of the lamp in the frame. */
  int base;

  /** Entry being played, or the one before the first; 0 rests. */
  int entry;

  /** Place in the section; the phase in a wave section. */
  int at;

  /** Frames left of the entry after those of the instruction. */
  int round;

  /** Frames left of the instruction. */
  int left;

  /**
   * Bits not yet used of the byte before {@link #at}, the next one on top, then a 1; 128 if none
   * are left, 0 while holding.
   */
  int held;

  /** At rest, on the first column. */
  Voice() {}

  Voice copy() {
    Voice copy = new Voice();
    copy.base = base;
    copy.entry = entry;
    copy.at = at;
    copy.round = round;
    copy.left = left;
    copy.held = held;
    return copy;
  }

  /** Whether all that comes is the same, given the same bytes in the frame buffer. */
  public boolean sameAs(Voice other) {
    return base == other.base
        && entry == other.entry
        && at == other.at
        && round == other.round
        && left == other.left
        && held == other.held;
  }

  /** Whether nothing changes any more. */
  public boolean rests() {
    return entry == 0 && left == 0;
  }
}
