package lampwright.app.live;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * Runs a link: opens the port, lets a {@link LinkSession} talk, and tries again where a link that
 * was there is lost. {@link #run} is for one thread, {@link #end} for any.
 */
public final class LiveLink implements Runnable {
  /**
   * What a link is to be.
   *
   * @param port as the system names it
   * @param identity of the rig whose frames are shown
   */
  public record Settings(String port, Baud baud, LinkIdentity identity) {}

  /** Between two looks at the line: shorter than a byte of 115,200 baud makes no frame later. */
  private static final long REST_NANOS = TimeUnit.MICROSECONDS.toNanos(400);

  /** Figures are reported no more often. */
  private static final long REPORT_NANOS = TimeUnit.MILLISECONDS.toNanos(500);

  /** Between two tries to open a port that is gone. */
  private static final long RETRY_NANOS = TimeUnit.SECONDS.toNanos(1);

  private final Settings settings;
  private final SerialSystem system;
  private final FrameFeed feed;
  private final Consumer<LinkState> listener;
  private final LongSupplier clock;
  private final byte[] buffer = new byte[256];
  private volatile boolean ended;
  private volatile LinkFigures total = LinkFigures.NONE;
  private boolean wasLive;

  /**
   * @param feed asked on the link's thread
   * @param listener told on the link's thread
   * @param clock ns, only goes forward
   */
  public LiveLink(
      Settings settings,
      SerialSystem system,
      FrameFeed feed,
      Consumer<LinkState> listener,
      LongSupplier clock) {
    this.settings = settings;
    this.system = system;
    this.feed = feed;
    this.listener = listener;
    this.clock = clock;
  }

  /** Runs until it is ended, or there is trouble that does not pass by itself. */
  @Override
  public void run() {
    Optional<LinkTrouble> trouble = Optional.empty();
    while (!ended && trouble.isEmpty()) {
      trouble = connect();
      if (trouble.isPresent() && wasLive && trouble.get().passing()) {
        trouble = Optional.empty();
        listener.accept(new LinkState.Lost(settings.port()));
        rest(RETRY_NANOS);
      }
    }
    listener.accept(
        trouble.isPresent() && !ended
            ? new LinkState.Failed(trouble.get())
            : new LinkState.Closed());
  }

  /** Ends it; {@link #run} returns soon after. */
  public void end() {
    ended = true;
  }

  /** How all of it did so far. */
  public LinkFigures figures() {
    return total;
  }

  private Optional<LinkTrouble> connect() {
    try (Transport line = system.open(settings.port(), settings.baud())) {
      if (!wasLive) {
        listener.accept(new LinkState.Asking(settings.port()));
      }
      LinkSession session =
          new LinkSession(settings.port(), settings.baud(), settings.identity(), now());
      LinkFigures before = total;
      try {
        return talk(session, line, before);
      } finally {
        total = sum(before, session.figures(now()));
      }
    } catch (LinkException gone) {
      return Optional.of(gone.trouble());
    }
  }

  private Optional<LinkTrouble> talk(LinkSession session, Transport line, LinkFigures before)
      throws LinkException {
    LinkSession.Phase told = LinkSession.Phase.ASKING;
    long toldAt = now();
    while (!ended) {
      int read = line.read(buffer);
      long now = now();
      session.received(buffer, read, now);
      boolean live = session.phase() == LinkSession.Phase.LIVE;
      if (live) {
        wasLive = true;
        session.offer(feed.at(now));
      }
      Optional<byte[]> packet = session.next(now);
      if (packet.isPresent()) {
        line.write(packet.get());
      }
      if (session.phase() == LinkSession.Phase.ENDED) {
        return session.trouble();
      }
      if (session.phase() != told || now - toldAt >= REPORT_NANOS) {
        told = session.phase();
        toldAt = now;
        total = sum(before, session.figures(now));
        tell(told);
      }
      if (read == 0 && packet.isEmpty()) {
        rest(REST_NANOS);
      }
    }
    return Optional.empty();
  }

  private void tell(LinkSession.Phase phase) {
    switch (phase) {
      case ASKING -> {}
      case LIVE -> listener.accept(new LinkState.Live(settings.port(), total));
      case LOST -> listener.accept(new LinkState.Lost(settings.port()));
      case ENDED -> {}
    }
  }

  // A reconnection is a loss that came back.
  private LinkFigures sum(LinkFigures before, LinkFigures session) {
    int reopened = before.sent() > 0 && session.sent() > 0 ? 1 : 0;
    return new LinkFigures(
        before.sent() + session.sent(),
        before.taken() + session.taken(),
        before.unanswered() + session.unanswered(),
        before.damaged() + session.damaged(),
        before.losses() + reopened + session.losses(),
        session.framesPerSecond());
  }

  private long now() {
    return clock.getAsLong();
  }

  private void rest(long nanos) {
    long until = now() + nanos;
    for (long left = nanos; left > 0 && !ended; left = until - now()) {
      LockSupport.parkNanos(left);
      if (Thread.currentThread().isInterrupted()) {
        ended = true;
      }
    }
  }
}
