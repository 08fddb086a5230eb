package lampwright.engine.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(600)
class LatestWorkerTest {
  private final Queue<Runnable> queued = new ArrayDeque<>();
  private final List<String> shown = new ArrayList<>();
  // Nothing runs before drain(), so that what waits and what runs is known.
  private final LatestWorker still =
      new LatestWorker(queued::add, Runnable::run, LatestWorker.Ending.INTERRUPT);
  private final BlockingQueue<String> said = new LinkedBlockingQueue<>();
  private final LatestWorker real =
      LatestWorker.named("worker-under-test", Runnable::run, LatestWorker.Ending.INTERRUPT);

  @AfterEach
  void end() {
    real.close();
  }

  private void drain() {
    while (!queued.isEmpty()) {
      queued.remove().run();
    }
  }

  private LatestWorker.Work showing(String name) {
    return turn -> turn.show(() -> shown.add(name));
  }

  private String next() throws InterruptedException {
    return said.poll(5, TimeUnit.MINUTES);
  }

  @Test
  void requestThatWaitsIsReplaced() {
    still.request(showing("first"));
    still.request(showing("second"));
    still.requestNext(showing("third"));
    drain();
    assertThat(shown).containsExactly("third");
    still.request(showing("fourth"));
    drain();
    assertThat(shown).containsExactly("third", "fourth");
  }

  @Test
  void cancelledRequestIsNotRun() {
    still.request(showing("first"));
    still.cancel();
    drain();
    assertThat(shown).isEmpty();
  }

  @Test
  void resultOfOvertakenWorkIsDropped() {
    List<Boolean> overtaken = new ArrayList<>();
    still.request(
        turn -> {
          turn.show(() -> shown.add("in time"));
          still.request(showing("newer"));
          overtaken.add(turn.overtaken());
          turn.show(() -> shown.add("too late"));
        });
    drain();
    assertThat(Thread.interrupted()).as("the interrupt was for the work alone").isFalse();
    assertThat(shown).containsExactly("in time", "newer");
    assertThat(overtaken).containsExactly(true);
  }

  @Test
  void resultThatWasHandedOverBeforeItWasOvertakenIsDroppedToo() {
    Queue<Runnable> screen = new ArrayDeque<>();
    LatestWorker worker =
        new LatestWorker(Runnable::run, screen::add, LatestWorker.Ending.INTERRUPT);
    worker.request(showing("old"));
    worker.request(showing("new"));
    screen.forEach(Runnable::run);
    assertThat(shown).containsExactly("new");
  }

  @Test
  void workBeforeTheNextOneStillShowsWhatItFinds() {
    still.request(
        turn -> {
          still.requestNext(showing("next"));
          assertThat(Thread.currentThread().isInterrupted()).isFalse();
          turn.show(() -> shown.add("before"));
        });
    drain();
    assertThat(shown).containsExactly("before", "next");
  }

  @Test
  void workThatAsksIsNotInterrupted() {
    LatestWorker asks = new LatestWorker(queued::add, Runnable::run, LatestWorker.Ending.ASK);
    asks.request(
        turn -> {
          asks.cancel();
          shown.add(turn.overtaken() + " " + Thread.currentThread().isInterrupted());
        });
    drain();
    assertThat(shown).containsExactly("true false");
  }

  @Test
  void workThatRunsIsInterruptedByANewerRequest() throws InterruptedException {
    CountDownLatch begun = new CountDownLatch(1);
    real.request(
        turn -> {
          begun.countDown();
          try {
            new CountDownLatch(1).await();
          } catch (InterruptedException ended) {
            said.add("ended");
            throw new CancellationException();
          }
        });
    begun.await();
    real.request(turn -> said.add("newer, interrupted: " + Thread.interrupted()));
    assertThat(next()).isEqualTo("ended");
    assertThat(next()).isEqualTo("newer, interrupted: false");
  }

  @Test
  void workRestsBeforeItBegins() throws InterruptedException {
    long begin = System.nanoTime();
    real.request(Duration.ofDays(1), turn -> said.add("much later"));
    real.request(Duration.ofMillis(30), turn -> said.add("later"));
    assertThat(next()).isEqualTo("later");
    assertThat(System.nanoTime() - begin).isGreaterThanOrEqualTo(30_000_000L);
  }

  @Test
  void failureIsReportedOnceAndTheNextRequestRuns() throws InterruptedException {
    Thread.UncaughtExceptionHandler before = Thread.getDefaultUncaughtExceptionHandler();
    Thread.setDefaultUncaughtExceptionHandler(
        (thread, fault) -> said.add(thread.getName() + ": " + fault.getMessage()));
    try {
      real.request(
          turn -> {
            throw new StackOverflowError("an error");
          });
      assertThat(next()).isEqualTo("worker-under-test: an error");
      real.request(
          turn -> {
            throw new IllegalStateException("an exception");
          });
      assertThat(next()).isEqualTo("worker-under-test: an exception");
      real.request(turn -> said.add("goes on"));
      assertThat(next()).isEqualTo("goes on");
    } finally {
      Thread.setDefaultUncaughtExceptionHandler(before);
    }
  }

  /** Issue 13: quitting while playing threw RejectedExecutionException. */
  @Test
  void closedWorkerTakesRequestsAndDoesNothing() {
    real.close();
    assertThatCode(
            () -> {
              real.request(turn -> said.add("too late"));
              real.requestNext(turn -> said.add("too late"));
              real.cancel();
              real.close();
            })
        .doesNotThrowAnyException();
    assertThat(said).isEmpty();
  }

  @Test
  void closingEndsTheThreadAndItsWork() throws InterruptedException {
    BlockingQueue<Thread> threads = new LinkedBlockingQueue<>();
    real.request(
        turn -> {
          threads.add(Thread.currentThread());
          while (!Thread.currentThread().isInterrupted()) {
            Thread.onSpinWait();
          }
          throw new CancellationException();
        });
    Thread thread = threads.take();
    assertThat(thread.isDaemon()).isTrue();
    real.close();
    thread.join(30_000);
    assertThat(thread.isAlive()).isFalse();
  }
}
