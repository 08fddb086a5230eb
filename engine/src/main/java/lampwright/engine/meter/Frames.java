package lampwright.engine.meter;

import java.util.Arrays;
import java.util.function.Consumer;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;

/** Shows the frames of a scene to gauges, as often as it is asked. */
final class Frames {
  /** Tables of no more bytes are rendered once and kept. */
  private static final long MAX_KEPT_BYTES = 32L << 20;

  private Frames() {}

  static Consumer<FrameGauge> of(FrameTable table) {
    if (table.bytes() > MAX_KEPT_BYTES) {
      return gauge -> render(table, gauge);
    }
    byte[][] kept = new byte[table.frameCount()][];
    render(
        table,
        (frame, bytes) -> {
          boolean same = frame > 0 && Arrays.equals(kept[frame - 1], bytes);
          kept[frame] = same ? kept[frame - 1] : bytes.clone();
        });
    return gauge -> {
      for (int i = 0; i < kept.length; i++) {
        gauge.frame(i, kept[i]);
      }
    };
  }

  /** Shows the frames once. */
  static void render(FrameTable table, FrameGauge gauge) {
    FrameCursor cursor = table.cursor();
    byte[] frame = new byte[table.layout().bytes()];
    while (cursor.hasNext()) {
      int number = cursor.position();
      cursor.next(frame);
      gauge.frame(number, frame);
    }
  }
}
