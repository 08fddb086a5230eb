package lampwright.engine.render;

import java.util.Arrays;

/** All frames of a scene, rendered once. A frame like the one before shares its bytes. */
final class KeptFrames {
  private final byte[][] frames;
  private int count;

  KeptFrames(int frameCount) {
    this.frames = new byte[frameCount][];
  }

  /** Whether all frames are there. */
  boolean isComplete() {
    return count == frames.length;
  }

  /** Keeps a frame; those before it are passed over unless they came one after another. */
  void add(int frame, byte[] bytes, int size) {
    if (frame != count || isComplete()) {
      return;
    }
    boolean same = count > 0 && Arrays.equals(frames[count - 1], 0, size, bytes, 0, size);
    frames[count] = same ? frames[count - 1] : Arrays.copyOf(bytes, size);
    count++;
  }

  /** Shows them once all are there. */
  FrameSource source() {
    return new FrameSource() {
      @Override
      public void render(int frame, byte[] into) {
        FrameSource.endIfInterrupted();
        System.arraycopy(frames[frame], 0, into, 0, frames[frame].length);
      }

      @Override
      public boolean restsOnThePast() {
        return false;
      }

      @Override
      public void rewind() {}
    };
  }
}
