package lampwright.exporters.packed.encode;

import lampwright.engine.check.Fault;
import lampwright.engine.render.Ceiling;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.CeilingFormat;

/** Codes a ceiling as the table that ends packed data. */
final class CeilingCoder {
  // As many emitters as a pixel has at most: longer periods are not met.
  private static final int MOST_PERIOD = 4;
  private static final int MOST_BYTES = 0xFFFF;

  private final Ceiling ceiling;
  private final int columns;

  private CeilingCoder(Ceiling ceiling, int columns) {
    this.ceiling = ceiling;
    this.columns = columns;
  }

  /**
   * The table of a ceiling.
   *
   * @param columns bytes of a frame
   * @throws PackRefusedException if it is too long
   */
  static byte[] code(Ceiling ceiling, int columns) {
    return new CeilingCoder(ceiling, columns).code();
  }

  private byte[] code() {
    ByteSink out = new ByteSink().number((int) ceiling.limit(), CeilingFormat.LIMIT_BYTES);
    int bytes = CeilingFormat.LIMIT_BYTES + CeilingFormat.SIZE_BYTES;
    for (int at = 0; at < columns; ) {
      int period = period(at);
      int run = run(at, period);
      out.u16(run).u8(period);
      for (int i = 0; i < period; i++) {
        out.u16(ceiling.weight(at + i));
      }
      at += run;
      bytes += CeilingFormat.RUN_HEAD_BYTES + period * CeilingFormat.WEIGHT_BYTES;
    }
    if (bytes > MOST_BYTES) {
      throw new PackRefusedException(
          new Fault(
              "ceiling",
              bytes + " bytes",
              "must be at most " + MOST_BYTES + "; fewer different outputs and pixels"));
    }
    return out.u16(bytes).toBytes();
  }

  /** The period that reaches farthest; of equal ones the shortest. */
  private int period(int from) {
    int best = 1;
    for (int period = 2; period <= Math.min(MOST_PERIOD, columns - from); period++) {
      best = run(from, period) > run(from, best) ? period : best;
    }
    // Of a run that does not come round nothing is gained.
    return run(from, best) > best ? best : 1;
  }

  private int run(int from, int period) {
    int at = Math.min(from + period, columns);
    while (at < columns && ceiling.weight(at) == ceiling.weight(at - period)) {
      at++;
    }
    return at - from;
  }
}
