package lampwright.app.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** The host's state machine against a simulated controller, on a line and a clock of the test's. */
class LinkSessionTest {
  private static final long MS = 1_000_000;
  private static final LinkIdentity RIG = new LinkIdentity(30, 0xBEEF);

  /** Bytes that arrive at a time. */
  private static final class Late {
    private final long atNanos;
    private final byte[] bytes;

    Late(long atNanos, byte[] bytes) {
      this.atNanos = atNanos;
      this.bytes = bytes;
    }

    long atNanos() {
      return atNanos;
    }

    byte[] bytes() {
      return bytes;
    }
  }

  /** A session and a controller with a line between them that takes the time that it takes. */
  private static final class Bench {
    final LinkSession session = new LinkSession("port", Baud.FAST, RIG, 0);
    SimulatedController controller;
    UnaryOperator<byte[]> out = UnaryOperator.identity();
    UnaryOperator<byte[]> back = UnaryOperator.identity();
    boolean silent;
    long wireNanos = MS;
    long nowNanos;
    int offered = -1;
    int everyMs = 20;
    private final Deque<Late> toController = new ArrayDeque<>();
    private final Deque<Late> toHost = new ArrayDeque<>();
    private long freeAt;

    Bench(SimulatedController controller) {
      this.controller = controller;
    }

    /** Lets time pass; a new frame, filled with its number, every few ms. */
    Bench run(long ms) {
      for (long end = nowNanos + ms * MS; nowNanos < end; nowNanos += MS / 4) {
        int wanted = (int) (nowNanos / MS / everyMs);
        if (wanted != offered) {
          offered = wanted;
          byte[] frame = new byte[RIG.frameBytes()];
          Arrays.fill(frame, (byte) wanted);
          session.offer(frame);
        }
        while (!toHost.isEmpty() && toHost.peek().atNanos() <= nowNanos) {
          byte[] bytes = toHost.poll().bytes();
          session.received(bytes, bytes.length, nowNanos);
        }
        Optional<byte[]> packet = session.next(nowNanos);
        packet.ifPresent(
            bytes ->
                toController.add(
                    new Late(nowNanos + Baud.FAST.nanos(bytes.length), out.apply(bytes))));
        while (!toController.isEmpty() && toController.peek().atNanos() <= nowNanos) {
          deliver(toController.poll().bytes());
        }
      }
      return this;
    }

    private void deliver(byte[] bytes) {
      // What comes while it sends to its wire is not received.
      if (silent || nowNanos < freeAt) {
        return;
      }
      for (byte b : bytes) {
        controller
            .take(b)
            .ifPresent(
                answer -> {
                  freeAt = nowNanos + wireNanos;
                  toHost.add(new Late(freeAt, back.apply(answer)));
                });
      }
      controller.gap();
    }

    List<Integer> numbers() {
      return controller.shown().stream().map(frame -> (int) frame[0]).toList();
    }
  }

  private static SimulatedController right() {
    return new SimulatedController(RIG.frameBytes(), RIG.layout(), 1);
  }

  @Test
  void framesGoOneAfterAnotherOnceTheControllerIsThere() {
    Bench bench = new Bench(right()).run(400);
    assertThat(bench.session.phase()).isEqualTo(LinkSession.Phase.LIVE);
    assertThat(bench.controller.questions()).isEqualTo(1);
    // The first may be that before the first offer's.
    assertThat(bench.numbers()).startsWith(0, 1, 2, 3).endsWith(19).hasSize(20);
    LinkFigures figures = bench.session.figures(bench.nowNanos);
    assertThat(figures.unanswered()).isZero();
    assertThat(figures.taken()).isEqualTo(20);
  }

  @Test
  void theNewestFrameWinsOnASlowWire() {
    Bench bench = new Bench(right());
    bench.wireNanos = 70 * MS;
    bench.run(1000);
    List<Integer> numbers = bench.numbers();
    assertThat(numbers).isSorted().doesNotHaveDuplicates();
    assertThat(numbers).hasSizeBetween(12, 14);
    // Each is the newest of its time: never more than a packet's way behind.
    assertThat(numbers.get(numbers.size() - 1)).isGreaterThanOrEqualTo(45);
  }

  @Test
  void onePacketIsUnderWayAtATime() {
    Bench bench = new Bench(right());
    bench.everyMs = 1;
    bench.wireNanos = 10 * MS;
    bench.run(500);
    // A second packet would have come while the wire was busy, and been lost.
    assertThat(bench.session.figures(bench.nowNanos).unanswered()).isZero();
  }

  @Test
  void aLostPacketIsFollowedByTheNewestFrameWithANewNumber() {
    Random random = new Random(1);
    Bench bench = new Bench(right());
    bench.out = bytes -> random.nextInt(4) == 0 ? new byte[0] : bytes;
    bench.run(10_000);
    assertThat(bench.session.phase()).isEqualTo(LinkSession.Phase.LIVE);
    LinkFigures figures = bench.session.figures(bench.nowNanos);
    assertThat(figures.unanswered()).isBetween(20L, 80L);
    assertThat(figures.losses()).isZero();
    assertThat(bench.controller.shown().size()).isGreaterThan(100);
  }

  @Test
  void aDamagedPacketShowsNothing() {
    Random random = new Random(2);
    Bench bench = new Bench(right());
    bench.out =
        bytes -> {
          byte[] hit = bytes.clone();
          if (random.nextInt(3) == 0) {
            hit[random.nextInt(hit.length)] ^= (byte) (1 << random.nextInt(8));
          }
          return hit;
        };
    bench.run(10_000);
    assertThat(bench.controller.shown())
        .allSatisfy(
            frame -> {
              for (byte b : frame) {
                assertThat(b).isEqualTo(frame[0]);
              }
            });
    assertThat(bench.controller.shown().size()).isGreaterThan(80);
  }

  @Test
  void damagedAnswersAreCountedAndDoNotStopIt() {
    Random random = new Random(3);
    Bench bench = new Bench(right());
    bench.back =
        bytes -> {
          byte[] hit = bytes.clone();
          if (random.nextInt(5) == 0) {
            hit[2 + random.nextInt(hit.length - 2)] ^= 0x10;
          }
          return hit;
        };
    bench.run(10_000);
    LinkFigures figures = bench.session.figures(bench.nowNanos);
    assertThat(figures.damaged()).isGreaterThan(10);
    // The last may be under way.
    assertThat(figures.sent() - figures.taken() - figures.unanswered()).isBetween(0L, 1L);
    assertThat(bench.session.phase()).isEqualTo(LinkSession.Phase.LIVE);
  }

  @Test
  void theSameFrameIsSentAgainFourTimesPerSecond() {
    Bench bench = new Bench(right());
    bench.everyMs = 1_000_000;
    bench.run(2_100);
    assertThat(bench.controller.shown()).hasSizeBetween(8, 9);
    assertThat(bench.session.figures(bench.nowNanos).losses()).isZero();
  }

  @Test
  void nobodyThereIsAskedTenTimesPerSecondForFiveSeconds() {
    Bench bench = new Bench(right());
    int[] asked = {0};
    bench.silent = true;
    bench.out =
        bytes -> {
          asked[0]++;
          return bytes;
        };
    bench.run(4_990);
    assertThat(bench.session.phase()).isEqualTo(LinkSession.Phase.ASKING);
    assertThat(asked[0]).isEqualTo(50);
    bench.run(20);
    assertThat(bench.session.phase()).isEqualTo(LinkSession.Phase.ENDED);
    assertThat(bench.session.trouble()).contains(new LinkTrouble.NoAnswer("port", Baud.FAST));
    bench.run(1000);
    assertThat(asked[0]).isEqualTo(50);
  }

  @Test
  void aControllerThatStartsLateIsFound() {
    Bench bench = new Bench(right());
    bench.silent = true;
    bench.run(2_000);
    bench.silent = false;
    bench.run(300);
    assertThat(bench.session.phase()).isEqualTo(LinkSession.Phase.LIVE);
  }

  @Test
  void aSilentControllerIsLostAfterASecondAndComesBack() {
    Bench bench = new Bench(right()).run(500);
    bench.silent = true;
    bench.run(950);
    assertThat(bench.session.phase()).isEqualTo(LinkSession.Phase.LIVE);
    bench.run(150);
    assertThat(bench.session.phase()).isEqualTo(LinkSession.Phase.LOST);
    // Restarted, it knows nothing of before.
    bench.controller = right();
    bench.silent = false;
    bench.run(300);
    assertThat(bench.session.phase()).isEqualTo(LinkSession.Phase.LIVE);
    assertThat(bench.controller.questions()).isPositive();
    assertThat(bench.session.figures(bench.nowNanos).losses()).isEqualTo(1);
    assertThat(bench.numbers()).isNotEmpty();
  }

  @Test
  void theFirmwareOfAnotherRigGetsNoFrame() {
    for (LinkIdentity other : List.of(new LinkIdentity(33, 0xBEEF), new LinkIdentity(30, 0xBEEE))) {
      Bench bench =
          new Bench(new SimulatedController(other.frameBytes(), other.layout(), 1)).run(500);
      assertThat(bench.session.trouble()).contains(new LinkTrouble.OtherRig(RIG, other));
      assertThat(bench.controller.shown()).isEmpty();
    }
  }

  @Test
  void anotherVersionGetsNoFrame() {
    Bench bench = new Bench(new SimulatedController(30, 0xBEEF, 2)).run(500);
    assertThat(bench.session.trouble()).contains(new LinkTrouble.OtherVersion(2));
    assertThat(bench.controller.shown()).isEmpty();
  }

  /** What was answered to a packet that was given up frees the wire of no other. */
  @Test
  void aLateAnswerIsNoneOfThePacketUnderWay() {
    LinkSession session = new LinkSession("port", Baud.FAST, RIG, 0);
    byte[] question = session.next(0).orElseThrow();
    take(session, SimulatedController.answer(1, question[3], 1, 0, 30, 0, 0xEF, 0xBE), MS);
    byte[] first = session.next(MS).orElseThrow();
    byte[] second = session.next(200 * MS).orElseThrow();
    assertThat(second[3]).isNotEqualTo(first[3]);
    take(session, SimulatedController.answer(2, first[3]), 201 * MS);
    session.offer(new byte[30]);
    assertThat(session.next(202 * MS)).isEmpty();
    take(session, SimulatedController.answer(2, second[3]), 203 * MS);
    assertThat(session.next(204 * MS)).isPresent();
  }

  @Test
  void aFrameThatNoPacketCanNameIsRefused() {
    LinkSession session = new LinkSession("port", Baud.FAST, new LinkIdentity(65_536, 0), 0);
    assertThat(session.trouble()).contains(new LinkTrouble.FrameTooLong(65_536));
    assertThat(session.next(0)).isEmpty();
  }

  @Test
  void framesOfAnotherLengthAreRefused() {
    LinkSession session = new LinkSession("port", Baud.FAST, RIG, 0);
    assertThatThrownBy(() -> session.offer(new byte[29]))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static void take(LinkSession session, byte[] bytes, long nowNanos) {
    session.received(bytes, bytes.length, nowNanos);
  }
}
