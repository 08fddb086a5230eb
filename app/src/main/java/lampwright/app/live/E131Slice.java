package lampwright.app.live;

/**
 * The bytes of a frame that a universe carries, from its first slot on.
 *
 * @param universe 1 to {@link E131Plan#MOST_UNIVERSE}
 * @param from the first byte of the frame
 * @param slots how many bytes, 1 to {@link E131Packet#MOST_SLOTS}
 * @param part the chain whose pixels they are; empty for the driver outputs
 * @param first its first pixel, or the first output
 * @param count pixels or outputs
 */
public record E131Slice(int universe, int from, int slots, String part, int first, int count) {
  /** The most packets of it per second: what a DMX512 line could carry. */
  public double mostPerSecond() {
    return 1e9 / E131Universe.leastNanos(slots);
  }
}
