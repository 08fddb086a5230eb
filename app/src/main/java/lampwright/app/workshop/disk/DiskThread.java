package lampwright.app.workshop.disk;

import java.time.Duration;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/** A thread that waits for disks. */
public final class DiskThread implements Background, AutoCloseable {
  private static final long END_SECONDS = 10;

  private final ScheduledThreadPoolExecutor thread =
      new ScheduledThreadPoolExecutor(1, work -> named(work));
  private final String name;

  /**
   * @param name of the thread
   */
  public DiskThread(String name) {
    this.name = name;
    thread.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
  }

  @Override
  public void run(Runnable work) {
    runAfter(Duration.ZERO, work);
  }

  @Override
  public void runAfter(Duration delay, Runnable work) {
    try {
      // What goes wrong in it is seen to there.
      Future<?> unused =
          thread.schedule(() -> guarded(work), delay.toNanos(), TimeUnit.NANOSECONDS);
    } catch (RejectedExecutionException closed) {
      // The program ends; what must be on the disk by then was given before.
      return;
    }
  }

  // Else a scheduled task's fault would vanish in its future.
  private static void guarded(Runnable work) {
    try {
      work.run();
    } catch (RuntimeException | Error fault) {
      Thread current = Thread.currentThread();
      current.getUncaughtExceptionHandler().uncaughtException(current, fault);
    }
  }

  @Override
  public Duration now() {
    return Duration.ofNanos(System.nanoTime());
  }

  /** Ends it once what is in hand is done, or after ten seconds; a second time does nothing. */
  @Override
  public void close() {
    if (thread.isShutdown()) {
      return;
    }
    thread.execute(thread::shutdown);
    try {
      if (!thread.awaitTermination(END_SECONDS, TimeUnit.SECONDS)) {
        thread.shutdownNow();
      }
    } catch (InterruptedException hurry) {
      thread.shutdownNow();
      Thread.currentThread().interrupt();
    }
  }

  private Thread named(Runnable work) {
    Thread named = new Thread(work, name);
    named.setDaemon(true);
    return named;
  }
}
