package lampwright.app.command;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** Runs what plays until it ends by itself, its time is over, or the user ends the program. */
final class LiveStage {
  /** What is left to say to lamps and receivers takes less. */
  private static final long FAREWELL_MS = 3000;

  private final Optional<Double> seconds;
  private final CountDownLatch begun = new CountDownLatch(1);

  /**
   * @param seconds how long it plays, from the first frame on
   */
  LiveStage(Optional<Double> seconds) {
    this.seconds = seconds;
  }

  /** The first frame is on its way. */
  void begin() {
    begun.countDown();
  }

  /**
   * Plays.
   *
   * @param play returns soon after {@code end} was called
   */
  void run(Callable<Void> play, Runnable end) throws IOException, InterruptedException {
    FutureTask<Void> task =
        new FutureTask<>(
            () -> {
              try {
                return play.call();
              } finally {
                begin();
              }
            });
    Thread thread = new Thread(task, "live");
    Thread farewell =
        new Thread(
            () -> {
              end.run();
              join(thread);
            },
            "farewell");
    Runtime.getRuntime().addShutdownHook(farewell);
    thread.start();
    try {
      begun.await();
      await(task);
    } finally {
      end.run();
      join(thread);
      forget(farewell);
    }
    await(task);
  }

  private void await(FutureTask<Void> task) throws IOException, InterruptedException {
    try {
      if (seconds.isPresent() && !task.isDone()) {
        task.get((long) (seconds.get() * 1e9), TimeUnit.NANOSECONDS);
      } else {
        task.get();
      }
    } catch (TimeoutException over) {
      // As was asked for.
    } catch (ExecutionException failed) {
      if (failed.getCause() instanceof IOException io) {
        throw io;
      }
      throw new IllegalStateException(failed.getCause());
    }
  }

  private static void join(Thread thread) {
    try {
      thread.join(FAREWELL_MS);
    } catch (InterruptedException hurry) {
      Thread.currentThread().interrupt();
    }
  }

  private static void forget(Thread farewell) {
    try {
      Runtime.getRuntime().removeShutdownHook(farewell);
    } catch (IllegalStateException ending) {
      // It runs already.
    }
  }
}
