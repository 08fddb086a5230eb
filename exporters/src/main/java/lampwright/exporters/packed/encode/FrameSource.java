package lampwright.exporters.packed.encode;

/** Gives the frames of one scene, in any order. */
@FunctionalInterface
public interface FrameSource {
  /**
   * Writes one frame.
   *
   * @param frame the frame's number, from 0
   * @param into filled whole with the frame's bytes: chains in wire order, then outputs
   */
  void read(int frame, byte[] into);
}
