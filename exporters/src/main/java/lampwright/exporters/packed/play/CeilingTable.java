package lampwright.exporters.packed.play;

import lampwright.engine.render.Ceiling;
import lampwright.exporters.packed.format.CeilingFormat;

/** Reads the ceiling of packed data, and checks it as a whole. */
final class CeilingTable {
  private static final long MOST = 0xFFFF_FFFFL;

  private CeilingTable() {}

  /**
   * The ceiling of data that has one.
   *
   * @throws PackedDataException if it makes no sense
   */
  static Ceiling read(PackedBytes data) {
    int at = data.ceilingAt;
    int end = data.size() - CeilingFormat.SIZE_BYTES;
    long limit = data.table(at, CeilingFormat.LIMIT_BYTES) & MOST;
    at += CeilingFormat.LIMIT_BYTES;
    int[] weights = new int[data.frameBytes];
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
    must(column == weights.length && sum <= Ceiling.MOST_SUM, at);
    return Ceiling.of(weights, limit);
  }

  private static void must(boolean holds, int at) {
    if (!holds) {
      throw PackedBytes.badContents(at);
    }
  }
}
