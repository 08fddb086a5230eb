package lampwright.engine.render;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The frames of a scene in any order. Those of a small scene are kept as they are rendered; of a
 * large one a cursor follows whoever reads, which costs little while that goes forward.
 */
final class SceneReel {
  private final FrameCursor cursor;
  private final byte[] @Nullable [] kept;
  private final byte[] buffer;
  private int buffered = -1;

  /**
   * A reel.
   *
   * @param keep whether its frames may be kept
   */
  SceneReel(FrameTable table, boolean keep) {
    this.cursor = table.passingCursor();
    this.kept = new byte[keep ? table.frameCount() : 0][];
    this.buffer = new byte[table.layout().bytes()];
  }

  /** A frame; not to be changed, and not to be kept past the next. */
  byte[] frame(int frame) {
    if (kept.length == 0) {
      if (buffered != frame) {
        if (cursor.position() != frame) {
          cursor.seek(frame);
        }
        cursor.next(buffer);
        buffered = frame;
      }
      return buffer;
    }
    byte[] bytes = kept[frame];
    while (bytes == null) {
      keepNext();
      bytes = kept[frame];
    }
    return bytes;
  }

  private void keepNext() {
    int at = cursor.position();
    cursor.next(buffer);
    byte[] before = at == 0 ? null : kept[at - 1];
    kept[at] = before != null && Arrays.equals(before, buffer) ? before : buffer.clone();
  }
}
