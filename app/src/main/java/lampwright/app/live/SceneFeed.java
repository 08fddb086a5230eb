package lampwright.app.live;

import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;

/**
 * The frames of a scene by a clock, from the first time that it is asked. A scene that plays once
 * stays on its last frame.
 */
public final class SceneFeed implements FrameFeed {
  private final FrameTable table;
  private final FrameCursor cursor;
  private final BenchBrightness brightness;
  private final byte[] rendered;
  private final ShowTime time;
  private byte[] shown = {};
  private long at = -1;

  public SceneFeed(FrameTable table, BenchBrightness brightness) {
    this.table = table;
    this.cursor = table.passingCursor();
    this.brightness = brightness;
    this.rendered = new byte[table.layout().bytes()];
    this.time = new ShowTime(table.framesPerSecond());
  }

  @Override
  public byte[] at(long nanos) {
    long due = time.frame(nanos);
    long frame = table.loops() ? due % table.frameCount() : Math.min(due, table.frameCount() - 1L);
    if (frame != at) {
      at = frame;
      if (cursor.position() != frame) {
        cursor.seek((int) frame);
      }
      cursor.next(rendered);
      shown = brightness.of(rendered);
    }
    return shown;
  }
}
