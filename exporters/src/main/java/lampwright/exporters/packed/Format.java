package lampwright.exporters.packed;

/**
 * The byte layout of packed data, version 1, shared by packer and decoder. Numbers are little
 * endian; C is a column number (1 byte, or 2 if {@link #WIDE_COLUMNS}), P a place, which is an
 * offset from the start of the data (2 bytes, or 3 if {@link #WIDE_PLACES}).
 *
 * <pre>
 *   header    'L' 'W' | crc-32 (4) of all after it | version flags | size (3) | frame bytes (2)
 *             | chains (1) | lamps (1) | scenes (1) | P of the tables
 *   dark list PATCH, FILL ... GO
 *   wave      kind (1) | first (2) | samples - 1 (2) | samples
 *   section   kind (1) | bytes from here to the instructions (2) | by kind
 *     STEPS   groups (1) | groups x { run, slots x rule } | echoes | instruction ... AGAIN
 *     RAW     groups (1) | groups x run | echoes | instruction ... AGAIN
 *     WAVE    size (2) | pace (2) | groups (1) | groups x { P of wave, run, phase (2), step (2) }
 *             | echoes | PATCH, FILL ... GO
 *     PLAIN   (bytes of a row in place of the way to the instructions) | rows
 *   run       first C | slots (1) | stride (1, signed)
 *   rule      predictor and width (1) | bias (1) | SCALED: C of source, factor (1)
 *   echoes    count (1) | count x { first C | source C | bytes (1) | stride (1, signed) }
 *   program   PATCH, FILL ... GO | entry ... | last
 *   entry     frames (2), 1 or more | P of section
 *   last      0 (2) | bytes back to the entry to go on with (P), or 0 to rest
 *   tables    lamps x { base column (2) | P of a dark list, or 0 to clear all from base on }
 *             | scenes x { frames (3) | period in us (3) | loop (1) | lamps x P of program or 0 }
 *             | chains x length (2)
 * </pre>
 */
final class Format {
  static final int MAGIC_0 = 'L';
  static final int MAGIC_1 = 'W';
  static final int VERSION = 1;

  static final int WIDE_COLUMNS = 1;
  static final int WIDE_PLACES = 2;

  /** Where the checked part begins, after magic and CRC. */
  static final int CHECKED_FROM = 6;

  static final int CRC_AT = 2;
  static final int VERSION_AT = 6;
  static final int FLAGS_AT = 7;
  static final int SIZE_AT = 8;
  static final int FRAME_BYTES_AT = 11;
  static final int CHAINS_AT = 13;
  static final int LAMPS_AT = 14;
  static final int SCENES_AT = 15;
  static final int TABLES_AT = 16;

  /** Most frames of one program entry, which bounds the cost of a seek. */
  static final int MAX_ENTRY_FRAMES = 4096;

  /** Most rows that a seek steps through in one lamp. */
  static final int MAX_BODY = 1024;

  // Section kinds.
  static final int KIND_MASK = 3;
  static final int STEPS = 0;
  static final int RAW = 1;
  static final int WAVE = 2;
  static final int PLAIN = 3; // no instructions; whole rows of the lamp stand in the section
  static final int FLAGGED = 4;

  // Instructions.
  static final int HOLD = 0x00; // + frames - 1
  static final int MAX_HOLD = 128;
  static final int PATCH = 0x80; // + bytes - 1, C, bytes
  static final int MAX_PATCH = 64;
  static final int FILL = 0xC0; // + pattern bytes - 1, C, total - 1 (1), pattern
  static final int MAX_FILL_PATTERN = 32;
  static final int MAX_FILL = 256;
  static final int ROWS = 0xE0; // rows (1), 1 to 255, then bits or bytes
  static final int MAX_ROWS = 255;
  static final int AGAIN = 0xE1;
  static final int GO = 0xE2;

  // Predictors of a rule; the low four bits are the width, 0 to 8.
  static final int ABSOLUTE = 0x00;
  static final int STEP = 0x10;
  static final int SCALED = 0x20;
  static final int PREDICTOR_MASK = 0xF0;

  // Wave kinds.
  static final int MIRROR = 1;
  static final int MIRROR_BETWEEN = 2;

  private Format() {}
}
