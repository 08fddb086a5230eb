package lampwright.app.live;

/** What a controller answers. */
public sealed interface Answer {
  /** The sequence number that it answers, 0 to 255. */
  int sequence();

  /**
   * To a question: it is there.
   *
   * @param version of the protocol
   * @param flags none so far
   */
  record Here(int sequence, int version, int flags, LinkIdentity identity) implements Answer {}

  /** To a frame: it was shown, and the wire is free for the next. */
  record Taken(int sequence) implements Answer {}
}
