package lampwright.engine.render;

import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;

/** Gives the frames of a scene one after another. Not safe for use by several threads. */
public final class FrameCursor {
  private final FrameSource source;
  private final int frameCount;
  private final int frameBytes;
  private final Optional<KeptFrames> keep;
  private final Consumer<KeptFrames> whenKept;
  private int next;

  /**
   * @param keep takes the frames as they come, if they are to be kept
   * @param whenKept hears when it has all
   */
  FrameCursor(
      FrameSource source,
      int frameCount,
      int frameBytes,
      Optional<KeptFrames> keep,
      Consumer<KeptFrames> whenKept) {
    this.source = source;
    this.frameCount = frameCount;
    this.frameBytes = frameBytes;
    this.keep = keep;
    this.whenKept = whenKept;
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
    Objects.checkFromIndexSize(0, frameBytes, into.length);
    source.render(next, into);
    if (keep.isPresent()) {
      KeptFrames kept = keep.get();
      kept.add(next, into, frameBytes);
      if (kept.isComplete()) {
        whenKept.accept(kept);
      }
    }
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
    if (source.restsOnThePast()) {
      if (frame < next) {
        source.rewind();
        next = 0;
      }
      byte[] passed = new byte[frameBytes];
      while (next < frame) {
        next(passed);
      }
    } else {
      source.rewind();
      next = frame;
    }
  }
}
