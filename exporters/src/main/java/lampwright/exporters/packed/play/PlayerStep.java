package lampwright.exporters.packed.play;

/** What a player does, in pieces that each take the same time whenever they are done. */
public enum PlayerStep {
  /** Calling the player for a frame, and keeping and giving back the registers. */
  FRAME,
  /** A lamp that holds on or rests. */
  LAMP,
  /** A lamp that changes, beside what it does: finding its section. */
  MOVE,
  /** Reading the next instruction. */
  INSTRUCTION,
  /** Reading the next entry. */
  ENTRY,
  /** Going on with the section's first instruction. */
  AGAIN,
  /** A PATCH or FILL, beside its bytes. */
  PATCH,
  /** A byte that a PATCH or FILL sets. */
  PATCH_BYTE,
  /** A row, beside its groups. */
  ROW,
  /** A group of columns of a row, beside its columns. */
  ROW_GROUP,
  /** A byte of a RAW row. */
  ROW_BYTE,
  /** Taking and putting back the bits in hand. */
  BITS,
  /** The flag of a row. */
  FLAG,
  /** A slot of a row in bits, beside its bits. */
  SLOT,
  /** More for a slot with a scaled predictor. */
  SCALED_SLOT,
  /** A bit of a slot. */
  BIT,
  /** Fetching the next byte of bits. */
  NEXT_BYTE,
  /** A frame of a WAVE section, beside its groups. */
  WAVE,
  /** A group of columns that read a wave, beside its columns. */
  WAVE_GROUP,
  /** A column that reads a wave. */
  WAVE_SLOT,
  /** More for a run or an echo of more than one. */
  SPAN,
  /** The list of echoes, beside its echoes. */
  ECHOES,
  /** An echo, beside its bytes. */
  ECHO,
  /** A byte of an echo. */
  ECHO_BYTE,
  /** A frame of a PLAIN section, beside its bytes. */
  PLAIN,
  /** A byte of a PLAIN section. */
  PLAIN_BYTE
}
