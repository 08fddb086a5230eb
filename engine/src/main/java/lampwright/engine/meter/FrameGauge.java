package lampwright.engine.meter;

/** Watches the frames of a scene go by, in order from the first. */
public interface FrameGauge {
  /**
   * Takes one frame.
   *
   * @param frame its number
   * @param bytes its bytes; only valid during the call
   */
  void frame(int frame, byte[] bytes);
}
