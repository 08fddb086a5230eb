package lampwright.exporters.packed.play;

/**
 * What the player for AVR takes, in clock cycles of an ATmega328P with columns of one byte, counted
 * over its source; a test compares it with the simulator's count. Good to a tenth.
 */
public final class PlayerCycles {
  /** Calling it, and keeping and giving back the registers. */
  public static final int FRAME = 152;

  /** A lamp that holds on or rests. */
  static final int LAMP = 16;

  /** A lamp that changes, beside what it does: finding its section. */
  static final int MOVE = 36;

  /** Reading the next instruction. */
  static final int INSTRUCTION = 86;

  /** Reading the next entry. */
  static final int ENTRY = 44;

  /** Going on with the section's first instruction. */
  static final int AGAIN = 24;

  static final int PATCH = 36;
  static final int PATCH_BYTE = 10;

  static final int ROW = 22;
  static final int ROW_GROUP = 32;
  static final int ROW_BYTE = 10;

  /** Taking and putting back the bits in hand. */
  static final int BITS = 34;

  static final int FLAG = 8;
  static final int SLOT = 25;
  static final int SCALED_SLOT = 20;
  static final int BIT = 6;
  static final int NEXT_BYTE = 19;

  static final int WAVE = 70;
  static final int WAVE_GROUP = 86;
  static final int WAVE_SLOT = 33;

  /** More for a run or an echo of more than one. */
  static final int SPAN = 28;

  static final int ECHOES = 9;
  static final int ECHO = 46;
  static final int ECHO_BYTE = 11;

  static final int PLAIN = 36;
  static final int PLAIN_BYTE = 9;

  private PlayerCycles() {}
}
