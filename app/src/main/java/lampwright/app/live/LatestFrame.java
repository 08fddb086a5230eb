package lampwright.app.live;

import java.util.Arrays;

/** The frame that was put last, by any thread. */
public final class LatestFrame implements FrameFeed {
  private volatile byte[] frame;

  /** All dark at first. */
  public LatestFrame(int frameBytes) {
    frame = new byte[frameBytes];
  }

  /**
   * From now on this is the frame.
   *
   * @throws IllegalArgumentException if it has another length than those before
   */
  public void put(byte[] newest) {
    byte[] before = frame;
    if (newest.length != before.length) {
      throw new IllegalArgumentException(
          "frame: " + newest.length + " bytes: must have " + before.length);
    }
    if (!Arrays.equals(before, newest)) {
      frame = newest.clone();
    }
  }

  @Override
  public byte[] at(long nanos) {
    return frame;
  }
}
