package lampwright.engine.work;

import java.time.Duration;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * Does one piece of work at a time off the thread that asks for it. Of several requests the latest
 * wins: one that waits is replaced, and one that runs is ended or let be, as the caller chooses.
 * What work fails with, an {@code Error} included, goes to the uncaught-exception handler of its
 * thread, and the worker goes on with the next request. Every method can be called from any thread;
 * after {@link #close} they do nothing and throw nothing.
 */
public final class LatestWorker implements AutoCloseable {
  /** How work that was overtaken learns of it. */
  public enum Ending {
    /** Its thread is interrupted. */
    INTERRUPT,
    /**
     * It asks {@link Turn#overtaken}; for work that writes files, which an interrupt would tear.
     */
    ASK
  }

  /** What is to be done. */
  @FunctionalInterface
  public interface Work {
    /**
     * Does it.
     *
     * @throws CancellationException if it was overtaken
     */
    void run(Turn turn);
  }

  /** One run of work. */
  public final class Turn {
    private final Work work;
    private final long generation;
    private final long dueNanos;

    private Turn(Work work, long generation, long dueNanos) {
      this.work = work;
      this.generation = generation;
      this.dueNanos = dueNanos;
    }

    /** Whether other work was requested since, or none. */
    public boolean overtaken() {
      return generation != latest;
    }

    /** Hands a result over; it is dropped if the work is overtaken before it is taken. */
    public void show(Runnable change) {
      results.execute(
          () -> {
            if (!overtaken()) {
              change.run();
            }
          });
    }
  }

  private static final long KEEP_THREAD_SECONDS = 10;

  private final Executor thread;
  private final Executor results;
  private final Ending ending;
  private volatile long latest;
  private @Nullable Turn waiting;
  private @Nullable Thread busy;
  private boolean interrupted;
  private boolean active;
  private boolean closed;

  /**
   * @param thread runs the work, in order and never two pieces at once
   * @param results runs what {@link Turn#show} is given, such as on the screen's thread
   */
  public LatestWorker(Executor thread, Executor results, Ending ending) {
    this.thread = thread;
    this.results = results;
    this.ending = ending;
  }

  /** A worker with a daemon thread of its own, which is there while there is work. */
  public static LatestWorker named(String name, Executor results, Ending ending) {
    ThreadPoolExecutor own =
        new ThreadPoolExecutor(
            1,
            1,
            KEEP_THREAD_SECONDS,
            TimeUnit.SECONDS,
            new LinkedBlockingQueue<>(),
            work -> {
              Thread made = new Thread(work, name);
              made.setDaemon(true);
              return made;
            },
            new ThreadPoolExecutor.DiscardPolicy());
    own.allowCoreThreadTimeOut(true);
    return new LatestWorker(own, results, ending);
  }

  /** Requests work in place of all that was requested before; what runs is ended. */
  public void request(Work work) {
    request(Duration.ZERO, work);
  }

  /**
   * As {@link #request(Work)}.
   *
   * @param rest is waited before it begins, so that work is spared where requests follow quickly
   */
  public void request(Duration rest, Work work) {
    synchronized (this) {
      overtake();
      put(work, rest);
    }
    start();
  }

  /** Requests work in place of what waits; what runs goes on, and its results are still wanted. */
  public void requestNext(Work work) {
    synchronized (this) {
      put(work, Duration.ZERO);
    }
    start();
  }

  /** Ends what runs and drops what waits. */
  public synchronized void cancel() {
    overtake();
  }

  /** Cancels, and ends its thread as soon as the work has ended. */
  @Override
  public void close() {
    synchronized (this) {
      closed = true;
      overtake();
    }
    if (thread instanceof ThreadPoolExecutor own) {
      own.shutdown();
    }
  }

  private void put(Work work, Duration rest) {
    if (!closed) {
      waiting = new Turn(work, latest, System.nanoTime() + rest.toNanos());
      notifyAll();
    }
  }

  // One at a time changes it: those who hold the monitor.
  @SuppressWarnings("NonAtomicVolatileUpdate")
  private void overtake() {
    latest++;
    waiting = null;
    notifyAll();
    if (busy != null && ending == Ending.INTERRUPT) {
      interrupted = true;
      busy.interrupt();
    }
  }

  private void start() {
    synchronized (this) {
      if (active || waiting == null) {
        return;
      }
      active = true;
    }
    // Not within the monitor: an executor may run it at once.
    thread.execute(this::runAll);
  }

  private void runAll() {
    for (Turn turn = next(); turn != null; turn = next()) {
      run(turn);
    }
  }

  private synchronized @Nullable Turn next() {
    while (waiting != null) {
      Turn turn = waiting;
      long restNanos = turn.dueNanos - System.nanoTime();
      if (restNanos <= 0) {
        waiting = null;
        busy = Thread.currentThread();
        return turn;
      }
      try {
        TimeUnit.NANOSECONDS.timedWait(this, restNanos);
      } catch (InterruptedException hurry) {
        // Nobody but this class ends its thread, and that by its fields.
        Thread.interrupted();
      }
    }
    active = false;
    return null;
  }

  private void run(Turn turn) {
    try {
      turn.work.run(turn);
    } catch (CancellationException ended) {
      if (!turn.overtaken()) {
        report(ended);
      }
    } catch (RuntimeException | Error fault) {
      report(fault);
    } finally {
      done();
    }
  }

  private synchronized void done() {
    busy = null;
    if (interrupted) {
      // The interrupt was for the work that ended; the next must not inherit it.
      Thread.interrupted();
      interrupted = false;
    }
  }

  private static void report(Throwable fault) {
    Thread current = Thread.currentThread();
    current.getUncaughtExceptionHandler().uncaughtException(current, fault);
  }
}
