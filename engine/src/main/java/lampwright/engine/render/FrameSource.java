package lampwright.engine.render;

import java.util.concurrent.CancellationException;

/** Where a cursor has the frames of a scene from. For one thread. */
interface FrameSource {
  /** Writes the bytes of a frame; asked for frames in rising order, or rewound in between. */
  void render(int frame, byte[] into);

  /** Ends rendering on a thread that is interrupted; asked before each frame. */
  static void endIfInterrupted() {
    if (Thread.currentThread().isInterrupted()) {
      throw new CancellationException("rendering was interrupted");
    }
  }

  /** Whether a frame cannot be had without those before it. */
  boolean restsOnThePast();

  /** Makes ready for any frame, or for the first one if frames rest on the past. */
  void rewind();
}
