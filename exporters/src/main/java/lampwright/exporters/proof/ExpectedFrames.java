package lampwright.exporters.proof;

/**
 * The frames that must be sent: those of a scene, again and again if it loops, else the last of
 * them for good.
 */
final class ExpectedFrames {
  private final byte[] table;
  private final int frameBytes;
  private final int frames;
  private final boolean loops;

  /**
   * A scene's frames.
   *
   * @param table all of them, one behind another
   */
  ExpectedFrames(byte[] table, int frameBytes, boolean loops) {
    if (frameBytes <= 0 || table.length == 0 || table.length % frameBytes != 0) {
      throw new IllegalArgumentException(
          table.length + " bytes are no whole number of frames of " + frameBytes);
    }
    this.table = table.clone();
    this.frameBytes = frameBytes;
    this.frames = table.length / frameBytes;
    this.loops = loops;
  }

  int frames() {
    return frames;
  }

  int frameBytes() {
    return frameBytes;
  }

  /** A byte, 0 to 255, of the frame that is sent as the n-th, from 0. */
  int at(long sent, int index) {
    long frame = loops ? sent % frames : Math.min(sent, frames - 1L);
    return table[(int) frame * frameBytes + index] & 0xFF;
  }
}
