package lampwright.engine.meter;

import java.util.function.Consumer;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;

/** Shows the frames of a scene to gauges, as often as it is asked. */
final class Frames {
  private Frames() {}

  static Consumer<FrameGauge> of(FrameTable table) {
    return gauge -> render(table, gauge);
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
