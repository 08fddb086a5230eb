package lampwright.exporters.packed;

/**
 * The byte layout of packed data, version 2, shared by packer and decoder. Numbers are little
 * endian; C is a column number (1 byte, or 2 if {@link #WIDE_COLUMNS}), P a distance back from the
 * tables (2 bytes, or 3 if {@link #WIDE_PLACES}), 0 for nothing.
 *
 * <pre>
 *   header    'L' 'W' | crc-32 (4) of all after it | version flags | frame bytes (2) | lamps (1)
 *             | scenes (1) | size (P) | place of the tables from the start (P)
 *   dark list PATCH, FILL ... GO
 *   wave      kind (1) | first (2) | samples - 1 (2) | samples
 *   section   kind (1) | bytes from here to the instructions (1, or 2 if LONG_SKIP) | by kind
 *     STEPS   groups (1) | groups x { run, slots x rule } | echoes | instruction ... AGAIN
 *             (none of the three if there are no rows)
 *     RAW     groups (1) | groups x run | echoes | instruction ... AGAIN
 *     WAVE    size (2) | pace (2) | SWINGS: phase (2) | groups (1) | groups x { P of wave, run, phase (2), step (2) }
 *             | echoes | PATCH, FILL ... GO
 *     PLAIN   (bytes of a row in place of the way to the instructions) | rows
 *   run       first C | slots (1) | stride (1, signed)
 *   rule      predictor and width (1) | bias (1) | SCALED: C of source, factor (1)
 *   echoes    count (1) | count x { first C | source C | bytes (1) | stride (1, signed) }
 *             (a stride or step stands only where slots or bytes are not 1)
 *   program   PATCH, FILL ... GO | entry ... | last
 *   entry     frames (2, high byte first), 1 to 4,096 | P of section
 *   last      REST, or BACK | bytes back to the entry to go on with (as wide as a P)
 *   tables    lamps x { base column (C) | P of a dark list, or DARK_ROW + bytes - 1, or 0 to clear
 *             all from base on }
 *             | scenes x { frames (3) | period in us, + LOOP (3) | lamps x P of program or 0 }
 * </pre>
 */
final class Format {
  static final int MAGIC_0 = 'L';
  static final int MAGIC_1 = 'W';
  static final int VERSION = 2;

  static final int WIDE_COLUMNS = 1;
  static final int WIDE_PLACES = 2;

  /** Where the checked part begins, after magic and CRC. */
  static final int CHECKED_FROM = 6;

  static final int CRC_AT = 2;
  static final int VERSION_AT = 6;
  static final int FLAGS_AT = 7;
  static final int FRAME_BYTES_AT = 8;
  static final int LAMPS_AT = 10;
  static final int SCENES_AT = 11;
  static final int SIZE_AT = 12;

  /** Bytes of the header of data with narrow places; wide ones make it 2 longer. */
  static final int HEADER_BYTES = 16;

  /** Bytes of the shortest data. */
  static final int LEAST_BYTES = 27;

  /** Bytes of a scene's table before its programs. */
  static final int SCENE_BYTES = 6;

  /** In the period of a scene whose first frame follows its last. */
  static final int LOOP = 0x800000;

  /** Most bytes that DARK_ROW can clear. */
  static final int MAX_DARK_ROW = 256;

  /** Most frames of one program entry, which bounds the cost of a seek. */
  static final int MAX_ENTRY_FRAMES = 4096;

  /** In place of an entry's frames: the last frame stays. */
  static final int REST = 0x80;

  /** In place of an entry's frames: goes on with an entry before it. */
  static final int BACK = 0x81;

  /** Most rows that a seek steps through in one lamp. */
  static final int MAX_BODY = 1024;

  // Section kinds.
  static final int KIND_MASK = 3;
  static final int STEPS = 0;
  static final int RAW = 1;
  static final int WAVE = 2;
  static final int PLAIN = 3; // no instructions; whole rows of the lamp stand in the section
  static final int FLAGGED = 4;
  static final int LONG_SKIP = 8;
  static final int SWINGS = 16;

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
  static final int MAX_WIDTH = 8;

  // Wave kinds.
  static final int MAX_WAVE_SIZE = 32767;
  static final int MIRROR = 1;
  static final int MIRROR_BETWEEN = 2;

  private Format() {}

  /** What marks a count of bytes to clear where the place of a dark list might stand. */
  static int darkRow(int placeBytes) {
    return placeBytes == 2 ? 0xFF00 : 0xFFFF00;
  }

  /** Most bytes of data, so that no place is taken for a count of bytes to clear. */
  static int maxSize(int placeBytes) {
    return darkRow(placeBytes) - 1;
  }

  /** Writes a section's kind and the bytes of its head (or of a plain row). */
  static void writeKind(ByteSink out, int kind, int skip) {
    if (skip > 0xFF) {
      out.u8(kind | LONG_SKIP).u16(skip);
    } else {
      out.u8(kind).u8(skip);
    }
  }
}
