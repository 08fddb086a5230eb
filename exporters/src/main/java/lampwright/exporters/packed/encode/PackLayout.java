package lampwright.exporters.packed.encode;

import java.util.List;
import java.util.Objects;

/**
 * Where the bytes of a frame belong: to which lamp.
 *
 * @param frameBytes bytes of one frame, 1 to {@value #MAX_FRAME_BYTES}
 * @param wireMicros how long a frame takes on the wires, all chains one after another and their
 *     reset, in microseconds; 0 if there is no chain
 * @param lamps the lamps, each with the frame offsets of its bytes; no byte belongs to two lamps
 */
public record PackLayout(int frameBytes, double wireMicros, List<LampColumns> lamps) {

  /** Most bytes of a frame. */
  public static final int MAX_FRAME_BYTES = 65535;

  /** Most lamps. */
  public static final int MAX_LAMPS = 255;

  /**
   * Checks that lamps share no byte.
   *
   * @throws IllegalArgumentException if they do, or a limit is passed
   */
  public PackLayout {
    lamps = List.copyOf(lamps);
    Limits.check("frameBytes", frameBytes, 1, MAX_FRAME_BYTES);
    Limits.check("lamps", lamps.size(), 1, MAX_LAMPS);
    if (!(wireMicros >= 0 && wireMicros < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("wireMicros: " + wireMicros + ": must be at least 0");
    }
    boolean[] taken = new boolean[frameBytes];
    for (LampColumns lamp : lamps) {
      for (int column : lamp.columns()) {
        Objects.checkIndex(column, frameBytes);
        if (taken[column]) {
          throw new IllegalArgumentException(
              "lamp " + lamp.id() + ": byte " + column + " belongs to another lamp too");
        }
        taken[column] = true;
      }
    }
  }

  /**
   * One lamp's bytes.
   *
   * @param id the lamp's id
   * @param columns frame offsets, 1 or more, in the lamp's own order
   */
  public record LampColumns(String id, List<Integer> columns) {
    /** Checks that the lamp has a byte. */
    public LampColumns {
      columns = List.copyOf(columns);
      Limits.check("columns", columns.size(), 1, MAX_FRAME_BYTES);
    }
  }
}
