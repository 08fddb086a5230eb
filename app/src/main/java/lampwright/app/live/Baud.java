package lampwright.app.live;

import java.util.Arrays;
import java.util.Optional;
import lampwright.exporters.live.LiveProtocol;

/** The baud rates of the bench link, the usual one first. */
public enum Baud {
  FAST(LiveProtocol.BAUD),
  SLOW(LiveProtocol.SLOW_BAUD);

  private static final long NANOS_PER_SECOND = 1_000_000_000;

  private final int rate;

  Baud(int rate) {
    this.rate = rate;
  }

  /** Symbols per second: start, data and stop bits. */
  public int rate() {
    return rate;
  }

  /** The one of this rate; empty if the link has none such. */
  public static Optional<Baud> of(int rate) {
    return Arrays.stream(values()).filter(baud -> baud.rate == rate).findFirst();
  }

  /** How long so many bytes take on the line, ns, rounded up. */
  public long nanos(int bytes) {
    return ((long) bytes * LiveProtocol.BITS_PER_BYTE * NANOS_PER_SECOND + rate - 1) / rate;
  }
}
