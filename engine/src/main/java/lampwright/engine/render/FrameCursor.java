package lampwright.engine.render;

import java.util.Objects;

/**
 * Renders the frames of a scene one after another, holding no more than one. Not safe for use by
 * several threads.
 */
public final class FrameCursor {
  private final SceneRenderer renderer;
  private final int frameCount;
  private int next;

  FrameCursor(SceneRenderer renderer, int frameCount) {
    this.renderer = renderer;
    this.frameCount = frameCount;
  }

  /** The number of the frame that {@link #next} writes. */
  public int position() {
    return next;
  }

  public boolean hasNext() {
    return next < frameCount;
  }

  /**
   * Writes the next frame.
   *
   * @param into room for at least one frame; bytes past it are left alone
   * @throws IndexOutOfBoundsException if there is no next frame, or too little room
   */
  public void next(byte[] into) {
    Objects.checkIndex(next, frameCount);
    Objects.checkFromIndexSize(0, renderer.frameBytes(), into.length);
    renderer.render(next, into);
    next++;
  }

  /**
   * Goes to a frame. Where lamps have a feel or the scene is dithered, every frame before it is
   * worked through, since each rests on the one before.
   *
   * @param frame 0 to the number of frames
   */
  public void seek(int frame) {
    Objects.checkIndex(frame, frameCount + 1);
    if (renderer.restsOnThePast()) {
      if (frame < next) {
        renderer.rewind();
        next = 0;
      }
      byte[] passed = new byte[renderer.frameBytes()];
      while (next < frame) {
        next(passed);
      }
    } else {
      renderer.rewind();
      next = frame;
    }
  }
}
