package lampwright.exporters.packed;

/**
 * The fair peer of packed data on a small controller: an LZSS of whole frame tables (Storer and
 * Szymanski, "Data compression via textual substitution", Journal of the ACM 29, 1982) with a
 * window of 256 bytes and copies of up to 256. It plays all lamps together and can't seek.
 */
final class PeerLzss {
  /** Program memory of its decoder on an AVR, as it was given with the goal; not built here. */
  static final int CODE_BYTES = 258;

  private static final int WINDOW = 256;
  private static final int LONGEST = 256;

  /** A flag and the byte. */
  private static final int LITERAL_BITS = 1 + 8;

  /** A flag, the distance and the length. */
  private static final int COPY_BITS = 1 + 8 + 8;

  private PeerLzss() {}

  /**
   * Bytes of a table coded as shortly as it can be. The rest behind a byte never takes more than
   * the rest from that byte on, so the longest copy is as good as any shorter one.
   */
  static int size(byte[] bytes) {
    int n = bytes.length;
    int[] bits = new int[n + 1];
    int[] run = new int[WINDOW + 1];
    for (int i = n - 1; i >= 0; i--) {
      int longest = 0;
      for (int d = 1; d <= WINDOW; d++) {
        run[d] = i >= d && bytes[i] == bytes[i - d] ? run[d] + 1 : 0;
        longest = Math.max(longest, run[d]);
      }
      int copied = Math.min(longest, LONGEST);
      bits[i] = LITERAL_BITS + bits[i + 1];
      if (copied > 0) {
        bits[i] = Math.min(bits[i], COPY_BITS + bits[i + copied]);
      }
    }
    return (bits[0] + 7) / 8;
  }
}
