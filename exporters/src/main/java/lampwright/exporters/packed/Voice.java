package lampwright.exporters.packed;

/** Where one lamp is in its program. Fields as in the C player. */
final class Voice {
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
}
