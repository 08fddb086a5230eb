package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;

/**
 * Work on numbered things on two threads, one of them that of the caller; on one where the machine
 * has no more. Which thread does what changes nothing in what comes of it.
 */
final class PairOfThreads {
  private PairOfThreads() {}

  /**
   * Does the work for each number.
   *
   * @param work gives what belongs to a number, whatever the other numbers do
   * @param before called on the caller's thread, with how many numbers were begun; may throw to end
   *     all of it
   * @return what came of it, by number
   */
  static <T> List<T> each(int count, IntFunction<T> work, IntConsumer before) {
    Object[] done = new Object[count];
    AtomicInteger begun = new AtomicInteger();
    if (count < 2 || Runtime.getRuntime().availableProcessors() == 1) {
      run(begun, done, work, before);
    } else {
      ForkJoinTask<?> other =
          ForkJoinPool.commonPool().submit(() -> run(begun, done, work, number -> {}));
      try {
        run(begun, done, work, before);
      } finally {
        // If this thread failed, the other one begins nothing more.
        begun.set(count);
        other.quietlyJoin();
      }
      other.join();
    }
    @SuppressWarnings("unchecked")
    List<T> all = (List<T>) Arrays.asList(done);
    return new ArrayList<>(all);
  }

  private static <T> void run(
      AtomicInteger begun, Object[] done, IntFunction<T> work, IntConsumer before) {
    for (int i = begun.getAndIncrement(); i < done.length; i = begun.getAndIncrement()) {
      before.accept(i);
      done[i] = work.apply(i);
    }
  }
}
