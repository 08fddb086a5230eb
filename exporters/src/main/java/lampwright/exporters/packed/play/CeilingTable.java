package lampwright.exporters.packed.play;

import lampwright.exporters.packed.format.CeilingFormat;

/** The ceiling of packed data, read and checked as a whole. Immutable. */
final class CeilingTable {
  private static final int WHOLE = 256;
  private static final long MOST = 0xFFFF_FFFFL;
  private static final int FULL = 255;

  private final int[] weights;
  private final long limit;

  /**
   * Reads the ceiling of data.
   *
   * @param data that has one
   * @throws PackedDataException if it makes no sense
   */
  CeilingTable(PackedBytes data) {
    int at = data.ceilingAt;
    int end = data.size() - CeilingFormat.SIZE_BYTES;
    limit = data.table(at, CeilingFormat.LIMIT_BYTES) & MOST;
    at += CeilingFormat.LIMIT_BYTES;
    weights = new int[data.frameBytes];
    int column = 0;
    long sum = 0;
    while (at < end) {
      must(at <= end - CeilingFormat.RUN_HEAD_BYTES, at);
      int columns = data.table(at, 2);
      int period = data.table(at + 2, 1);
      int first = at + CeilingFormat.RUN_HEAD_BYTES;
      must(columns > 0 && columns <= weights.length - column && period > 0, at);
      must(period * CeilingFormat.WEIGHT_BYTES <= end - first, at);
      for (int i = 0; i < columns; i++) {
        int weight =
            data.table(first + i % period * CeilingFormat.WEIGHT_BYTES, CeilingFormat.WEIGHT_BYTES);
        weights[column++] = weight;
        sum += weight;
      }
      at = first + period * CeilingFormat.WEIGHT_BYTES;
    }
    must(column == weights.length && sum * FULL <= MOST, at);
  }

  private static void must(boolean holds, int at) {
    if (!holds) {
      throw PackedBytes.badContents(at);
    }
  }

  /** Scales a frame that is over the limit. */
  void apply(byte[] frame) {
    long sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += (long) weights[i] * (frame[i] & FULL);
    }
    if (sum > limit) {
      long factor = limit / ((sum + FULL) / WHOLE);
      for (int i = 0; i < weights.length; i++) {
        frame[i] = (byte) (((frame[i] & FULL) * factor) >> Byte.SIZE);
      }
    }
  }
}
