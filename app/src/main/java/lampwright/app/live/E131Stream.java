package lampwright.app.live;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;

/**
 * Sends frames as the universes of a plan until it is ended, and then says so to receivers. {@link
 * #run} is for one thread, {@link #end} for any.
 */
public final class E131Stream {
  /** How often the end of the stream is sent (ANSI E1.31-2018, 6.2.6). */
  private static final int ENDS = 3;

  private static final long REST_NANOS = TimeUnit.MILLISECONDS.toNanos(1);

  /** A network that fails for longer has failed. */
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(10);

  private final List<E131Universe> universes;
  private final FrameFeed feed;
  private final E131Network.Sender sender;
  private final LongSupplier clock;
  private volatile boolean ended;
  private final AtomicLong sent = new AtomicLong();
  private final AtomicLong failed = new AtomicLong();
  private long workedAt;

  /**
   * @param feed asked on the stream's thread
   * @param clock ns, only goes forward
   */
  public E131Stream(
      E131Plan plan,
      E131Source source,
      FrameFeed feed,
      E131Network.Sender sender,
      LongSupplier clock) {
    this.universes = plan.slices().stream().map(slice -> new E131Universe(source, slice)).toList();
    this.feed = feed;
    this.sender = sender;
    this.clock = clock;
  }

  /**
   * Sends until it is ended.
   *
   * @throws IOException if the network fails from the start, or for long
   */
  public void run() throws IOException {
    workedAt = clock.getAsLong() - PATIENCE_NANOS;
    byte[] frame = feed.at(clock.getAsLong());
    while (!ended) {
      long now = clock.getAsLong();
      frame = feed.at(now);
      for (E131Universe universe : universes) {
        var packet = universe.next(frame, now);
        if (packet.isPresent()) {
          send(universe, packet.get(), now);
        }
      }
      LockSupport.parkNanos(REST_NANOS);
      if (Thread.currentThread().isInterrupted()) {
        ended = true;
      }
    }
    for (int i = 0; i < ENDS; i++) {
      for (E131Universe universe : universes) {
        send(universe, universe.end(frame), clock.getAsLong());
      }
    }
  }

  // A network that was there and is gone for a moment ends no show.
  private void send(E131Universe universe, byte[] packet, long nowNanos) throws IOException {
    try {
      sender.send(universe.slice().universe(), packet);
      sent.incrementAndGet();
      workedAt = nowNanos;
    } catch (IOException lost) {
      failed.incrementAndGet();
      if (nowNanos - workedAt >= PATIENCE_NANOS) {
        throw lost;
      }
    }
  }

  /** Ends it; {@link #run} returns soon after. */
  public void end() {
    ended = true;
  }

  /** Packets sent. */
  public long sent() {
    return sent.get();
  }

  /** Packets that the network did not take. */
  public long failed() {
    return failed.get();
  }
}
