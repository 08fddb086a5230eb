package lampwright.app.live;

/** Where the frames come from that lamps show. For one thread. */
@FunctionalInterface
public interface FrameFeed {
  /**
   * The frame of an instant.
   *
   * @param nanos by a clock that only goes forward
   * @return the same object as long as nothing changes; nobody changes its bytes
   */
  byte[] at(long nanos);
}
