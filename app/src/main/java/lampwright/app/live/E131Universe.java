package lampwright.app.live;

import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * One universe over time: what changed is sent at once, but no faster than a DMX512 line could
 * carry it; the same three times; then from time to time, so that receivers know that it is there
 * (ANSI E1.31-2018, 6.6.1 and 6.6.2). For one thread.
 */
final class E131Universe {
  /** What does not change is sent again after this time: between 800 and 1,000 ms. */
  static final long KEEP_ALIVE_NANOS = TimeUnit.MILLISECONDS.toNanos(900);

  /** How often the same is sent before that. */
  static final int REPEATS = 3;

  // ANSI E1.11-2008, table 6: break, mark after break, slot of 11 bits, break to break.
  private static final int BREAK_US = 92;
  private static final int MARK_US = 12;
  private static final int SLOT_US = 44;
  private static final int LEAST_US = 1204;

  /** The time of a whole universe of slots: small ones need not repeat faster. */
  private static final long REPEAT_NANOS = leastNanos(E131Packet.MOST_SLOTS);

  private final E131Source source;
  private final E131Slice slice;
  private final long leastNanos;
  private byte[] last = {};
  private int repeats;
  private int sequence;
  private long sentAt;

  E131Universe(E131Source source, E131Slice slice) {
    this.source = source;
    this.slice = slice;
    this.leastNanos = leastNanos(slice.slots());
  }

  /** The least time between two packets of so many slots. */
  static long leastNanos(int slots) {
    // The start code is a slot as well.
    int packet = BREAK_US + MARK_US + SLOT_US * (1 + slots);
    return TimeUnit.MICROSECONDS.toNanos(Math.max(LEAST_US, packet));
  }

  E131Slice slice() {
    return slice;
  }

  /** What is to be sent now, if anything is. */
  Optional<byte[]> next(byte[] frame, long nowNanos) {
    boolean changed = !isLast(frame);
    long wait = changed ? leastNanos : repeats < REPEATS ? REPEAT_NANOS : KEEP_ALIVE_NANOS;
    if (last.length > 0 && nowNanos - sentAt < wait) {
      return Optional.empty();
    }
    if (changed) {
      last = Arrays.copyOfRange(frame, slice.from(), slice.from() + slice.slots());
      repeats = 0;
    }
    repeats++;
    sentAt = nowNanos;
    return Optional.of(packet(false, frame));
  }

  private boolean isLast(byte[] frame) {
    return last.length > 0
        && Arrays.equals(last, 0, last.length, frame, slice.from(), slice.from() + slice.slots());
  }

  /** The packet that says that no more come. */
  byte[] end(byte[] frame) {
    return packet(true, frame);
  }

  private byte[] packet(boolean terminated, byte[] frame) {
    byte[] packet = E131Packet.data(source, slice, sequence, terminated, frame);
    sequence = (sequence + 1) & 0xFF;
    return packet;
  }
}
