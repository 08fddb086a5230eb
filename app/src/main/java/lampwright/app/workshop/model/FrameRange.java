package lampwright.app.workshop.model;

/**
 * A part of a scene that is played again and again.
 *
 * @param from first frame, at least 0
 * @param to the frame after the last, above from
 */
public record FrameRange(int from, int to) {
  public FrameRange {
    if (from < 0 || to <= from) {
      throw new IllegalArgumentException(
          "range: " + from + " to " + to + ": must be at least one frame");
    }
  }

  /** Whether a frame is in it. */
  public boolean has(int frame) {
    return frame >= from && frame < to;
  }
}
