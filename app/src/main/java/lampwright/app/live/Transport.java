package lampwright.app.live;

/** A line of bytes in both directions. For one thread. */
public interface Transport extends AutoCloseable {
  /**
   * Reads what has come, without waiting.
   *
   * @return how many bytes; 0 if none
   * @throws LinkException if the line is gone
   */
  int read(byte[] into) throws LinkException;

  /**
   * Writes all bytes, or hands them to the system to do so.
   *
   * @throws LinkException if the line is gone
   */
  void write(byte[] bytes) throws LinkException;

  @Override
  void close();
}
