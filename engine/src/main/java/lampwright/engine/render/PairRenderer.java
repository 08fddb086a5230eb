package lampwright.engine.render;

import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;

/**
 * Renders blocks of frames on two threads, the first half of each on the one that asks. Which
 * thread renders a frame changes nothing in it. Blocks grow while frames are asked for one after
 * another, so that a frame that is asked for alone costs no more than itself.
 */
final class PairRenderer implements FrameSource {
  private static final int MOST_FRAMES = 64;
  private static final int MOST_BYTES = 1 << 20;

  private final SceneRenderer own;
  private final SceneRenderer other;
  private final int frameCount;
  private final int frameBytes;
  private final byte[][] block;
  private int first;
  private int size;

  /**
   * @param own does not rest on the past, and neither does {@code other}, which renders the same
   */
  PairRenderer(SceneRenderer own, SceneRenderer other, int frameCount) {
    this.own = own;
    this.other = other;
    this.frameCount = frameCount;
    this.frameBytes = own.frameBytes();
    int frames = Math.max(2, Math.min(MOST_FRAMES, MOST_BYTES / frameBytes));
    this.block = new byte[frames][frameBytes];
  }

  @Override
  public void render(int frame, byte[] into) {
    FrameSource.endIfInterrupted();
    if (frame < first || frame >= first + size) {
      boolean follows = size > 0 && frame == first + size;
      int wanted = follows ? Math.min(2 * size, block.length) : 1;
      fill(frame, Math.min(wanted, frameCount - frame));
    }
    System.arraycopy(block[frame - first], 0, into, 0, frameBytes);
  }

  private void fill(int from, int count) {
    // Should it fail, nothing is there.
    size = 0;
    first = from;
    int half = (count + 1) / 2;
    if (count == 1) {
      own.render(from, block[0]);
    } else {
      ForkJoinTask<?> rest =
          ForkJoinPool.commonPool().submit(() -> renderSome(other, from, half, count));
      try {
        renderSome(own, from, 0, half);
      } finally {
        rest.quietlyJoin();
      }
      rest.join();
    }
    size = count;
  }

  private void renderSome(SceneRenderer renderer, int from, int start, int end) {
    for (int i = start; i < end; i++) {
      renderer.render(from + i, block[i]);
    }
  }

  @Override
  public boolean restsOnThePast() {
    return false;
  }

  @Override
  public void rewind() {
    own.rewind();
    other.rewind();
    size = 0;
  }
}
