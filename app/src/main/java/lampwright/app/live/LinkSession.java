package lampwright.app.live;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import lampwright.exporters.live.LiveProtocol;

/**
 * The host's side of the bench link, from the first question to the end: it is given what comes
 * from the line and the time, and gives what goes onto it. It neither waits nor knows what the line
 * is. Times are in ns, by a clock that only goes forward. For one thread.
 */
public final class LinkSession {
  /** How a session is. */
  public enum Phase {
    /** It asks whether the controller is there. */
    ASKING,
    /** Frames go to the controller. */
    LIVE,
    /** It asks anew, since the controller is silent. */
    LOST,
    /** It is over: {@link LinkSession#trouble} says why. */
    ENDED
  }

  /** A question is asked again after this time. */
  static final long ASK_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

  /** Asking without an answer ends after this time: longer than a controller takes to start. */
  static final long ASKING_NANOS = TimeUnit.SECONDS.toNanos(5);

  /** An answer comes within this time after a packet's last bit: wire time and more. */
  static final long ANSWER_NANOS = TimeUnit.MILLISECONDS.toNanos(150);

  /** The same frame is sent again after this time, so that the controller stays live. */
  static final long REPEAT_NANOS = TimeUnit.MILLISECONDS.toNanos(250);

  /** After this time without any answer the link is lost. */
  static final long LOST_NANOS = TimeUnit.SECONDS.toNanos(1);

  private final String port;
  private final Baud baud;
  private final LinkIdentity identity;
  private final AnswerReader answers = new AnswerReader();
  private final RateCounter rate;
  private Phase phase = Phase.ASKING;
  private Optional<LinkTrouble> trouble = Optional.empty();
  private byte[] newest;
  // Set when nothing of this connection was sent yet.
  private boolean fresh = true;
  private byte[] last;
  private int sequence;
  private boolean underWay;
  private long sentAt;
  private long heardAt;
  private long askedAt;
  private long askingSince;
  private long sent;
  private long taken;
  private long unanswered;
  private int losses;

  /**
   * @param port its name, for what it reports
   * @param identity of the rig
   */
  public LinkSession(String port, Baud baud, LinkIdentity identity, long nowNanos) {
    this.port = port;
    this.baud = baud;
    this.identity = identity;
    this.rate = new RateCounter(nowNanos);
    this.newest = new byte[identity.frameBytes()];
    this.last = newest;
    this.askingSince = nowNanos;
    this.askedAt = nowNanos - ASK_NANOS;
    if (identity.frameBytes() > LiveProtocol.MAX_FRAME_BYTES) {
      end(new LinkTrouble.FrameTooLong(identity.frameBytes()));
    }
  }

  /** Where it is. */
  public Phase phase() {
    return phase;
  }

  /** Why it is over, if it is. */
  public Optional<LinkTrouble> trouble() {
    return trouble;
  }

  /** How it does. */
  public LinkFigures figures(long nowNanos) {
    return new LinkFigures(
        sent, taken, unanswered, answers.damaged(), losses, rate.perSecond(nowNanos));
  }

  /**
   * This is the newest frame. Frames are told apart as objects: one that was sent is not sent again
   * before it has to be.
   *
   * @param frame not changed by anybody from now on
   */
  public void offer(byte[] frame) {
    if (frame.length != identity.frameBytes()) {
      throw new IllegalArgumentException(
          "frame: " + frame.length + " bytes: must have " + identity.frameBytes());
    }
    newest = frame;
  }

  /** These bytes came from the line. */
  public void received(byte[] bytes, int count, long nowNanos) {
    answers.take(bytes, count, answer -> heard(answer, nowNanos));
  }

  private void heard(Answer answer, long nowNanos) {
    if (phase == Phase.ENDED) {
      return;
    }
    if (answer instanceof Answer.Here here) {
      heard(here, nowNanos);
    } else if (phase == Phase.LIVE) {
      heardAt = nowNanos;
      if (underWay && answer.sequence() == sequence) {
        underWay = false;
        taken++;
        rate.count();
      }
    }
  }

  private void heard(Answer.Here here, long nowNanos) {
    heardAt = nowNanos;
    if (here.version() != LiveProtocol.VERSION) {
      end(new LinkTrouble.OtherVersion(here.version()));
    } else if (!here.identity().equals(identity)) {
      end(new LinkTrouble.OtherRig(identity, here.identity()));
    } else if (phase != Phase.LIVE) {
      phase = Phase.LIVE;
      fresh = true;
      underWay = false;
    }
  }

  private void end(LinkTrouble why) {
    phase = Phase.ENDED;
    trouble = Optional.of(why);
  }

  /** What goes onto the line now, if anything does; to be asked again until there is nothing. */
  public Optional<byte[]> next(long nowNanos) {
    return switch (phase) {
      case ASKING, LOST -> ask(nowNanos);
      case LIVE -> show(nowNanos);
      case ENDED -> Optional.empty();
    };
  }

  private Optional<byte[]> ask(long nowNanos) {
    if (nowNanos - askingSince >= ASKING_NANOS) {
      end(new LinkTrouble.NoAnswer(port, baud));
      return Optional.empty();
    }
    if (nowNanos - askedAt < ASK_NANOS) {
      return Optional.empty();
    }
    askedAt = nowNanos;
    return Optional.of(LinkPacket.question(nextSequence()));
  }

  private Optional<byte[]> show(long nowNanos) {
    if (nowNanos - heardAt >= LOST_NANOS) {
      phase = Phase.LOST;
      losses++;
      askingSince = nowNanos;
      askedAt = nowNanos - ASK_NANOS;
      answers.clear();
      return ask(nowNanos);
    }
    if (underWay) {
      if (nowNanos - sentAt < packetNanos() + ANSWER_NANOS) {
        return Optional.empty();
      }
      unanswered++;
      return Optional.of(packet(nowNanos));
    }
    boolean due = fresh || newest != last || nowNanos - sentAt >= REPEAT_NANOS;
    return due ? Optional.of(packet(nowNanos)) : Optional.empty();
  }

  private byte[] packet(long nowNanos) {
    fresh = false;
    last = newest;
    sentAt = nowNanos;
    underWay = true;
    sent++;
    return LinkPacket.frame(nextSequence(), newest);
  }

  private int nextSequence() {
    sequence = (sequence + 1) & 0xFF;
    return sequence;
  }

  private long packetNanos() {
    return baud.nanos(LiveProtocol.packetBytes(identity.frameBytes()));
  }
}
