package lampwright.exporters.packed.format;

import com.google.common.hash.Hashing;

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
 *             (a stride or step is only where slots or bytes are not 1)
 *   program   PATCH, FILL ... GO | entry ... | last
 *   entry     frames (2, high byte first), 1 to 4,096 | P of section
 *   last      REST, or BACK | bytes back to the entry to go on with (as wide as a P)
 *   tables    lamps x { base column (C) | P of a dark list, or DARK_ROW + bytes - 1, or 0 to clear
 *             all from base on }
 *             | scenes x { frames (3) | period in us, + LOOP (3) | lamps x P of program or 0 }
 *   show      only with the flag SHOW: see {@link ShowFormat}
 *   ceiling   only with the flag CEILING: see {@link CeilingFormat}
 * </pre>
 */
public final class Format {
  public static final int MAGIC_0 = 'L';
  public static final int MAGIC_1 = 'W';
  public static final int VERSION = 2;

  public static final int WIDE_COLUMNS = 1;
  public static final int WIDE_PLACES = 2;

  /** Behind the scenes' tables there is a show, of {@link ShowFormat}. */
  public static final int SHOW = 4;

  /**
   * Behind the show there is a ceiling of the current, of {@link CeilingFormat}; with a show only.
   */
  public static final int CEILING = 8;

  /** All flags. */
  public static final int FLAGS = WIDE_COLUMNS | WIDE_PLACES | SHOW | CEILING;

  /** Where the checked part begins, after magic and CRC. */
  public static final int CHECKED_FROM = 6;

  public static final int CRC_AT = 2;
  public static final int VERSION_AT = 6;
  public static final int FLAGS_AT = 7;
  public static final int FRAME_BYTES_AT = 8;
  public static final int LAMPS_AT = 10;
  public static final int SCENES_AT = 11;
  public static final int SIZE_AT = 12;

  /** Bytes of the header of data with narrow places; wide ones make it 2 longer. */
  public static final int HEADER_BYTES = 16;

  /** Bytes of the shortest data. */
  public static final int LEAST_BYTES = 27;

  /** Bytes of a scene's table before its programs. */
  public static final int SCENE_BYTES = 6;

  /** In the period of a scene whose first frame follows its last. */
  public static final int LOOP = 0x800000;

  /** Most bytes that DARK_ROW can clear. */
  public static final int MAX_DARK_ROW = 256;

  /** Most frames of one program entry, which bounds the cost of a seek. */
  public static final int MAX_ENTRY_FRAMES = 4096;

  /** In place of an entry's frames: the last frame stays. */
  public static final int REST = 0x80;

  /** In place of an entry's frames: goes on with an entry before it. */
  public static final int BACK = 0x81;

  /** Most rows that a seek steps through in one lamp. */
  public static final int MAX_BODY = 1024;

  // Section kinds.
  public static final int KIND_MASK = 3;
  public static final int STEPS = 0;
  public static final int RAW = 1;
  public static final int WAVE = 2;
  public static final int PLAIN = 3; // no instructions; whole rows of the lamp stand in the section
  public static final int FLAGGED = 4;
  public static final int LONG_SKIP = 8;
  public static final int SWINGS = 16;

  // Instructions.
  public static final int HOLD = 0x00; // + frames - 1
  public static final int MAX_HOLD = 128;
  public static final int PATCH = 0x80; // + bytes - 1, C, bytes
  public static final int MAX_PATCH = 64;
  public static final int FILL = 0xC0; // + pattern bytes - 1, C, total - 1 (1), pattern
  public static final int MAX_FILL_PATTERN = 32;
  public static final int MAX_FILL = 256;
  public static final int ROWS = 0xE0; // rows (1), 1 to 255, then bits or bytes
  public static final int MAX_ROWS = 255;
  public static final int AGAIN = 0xE1;
  public static final int GO = 0xE2;

  // Predictors of a rule; the low four bits are the width, 0 to 8.
  public static final int ABSOLUTE = 0x00;
  public static final int STEP = 0x10;
  public static final int SCALED = 0x20;
  public static final int PREDICTOR_MASK = 0xF0;
  public static final int MAX_WIDTH = 8;

  // Wave kinds.
  public static final int MAX_WAVE_SIZE = 32767;
  public static final int MIRROR = 1;
  public static final int MIRROR_BETWEEN = 2;

  private Format() {}

  /** What marks a count of bytes to clear where the place of a dark list might be. */
  public static int darkRow(int placeBytes) {
    return placeBytes == 2 ? 0xFF00 : 0xFFFF00;
  }

  /** Most bytes of data, so that no place is taken for a count of bytes to clear. */
  public static int maxSize(int placeBytes) {
    return darkRow(placeBytes) - 1;
  }

  /** The CRC-32 of data, of all that is checked by it. */
  public static int checksum(byte[] data) {
    return Hashing.crc32().hashBytes(data, CHECKED_FROM, data.length - CHECKED_FROM).asInt();
  }

  /** Writes a section's kind and the bytes of its head (or of a plain row). */
  public static void writeKind(ByteSink out, int kind, int skip) {
    if (skip > 0xFF) {
      out.u8(kind | LONG_SKIP).u16(skip);
    } else {
      out.u8(kind).u8(skip);
    }
  }
}
