package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.common.util.concurrent.Uninterruptibles;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;

class PairOfThreadsTest {
  @Test
  void nothingIsNoWork() {
    assertThat(PairOfThreads.each(0, i -> i, i -> {})).isEmpty();
  }

  @Test
  void whatComesOfItIsInOrder() {
    List<Integer> squares = PairOfThreads.each(1000, i -> i * i, i -> {});
    for (int i = 0; i < 1000; i++) {
      assertThat(squares.get(i)).isEqualTo(i * i);
    }
  }

  @Test
  void callerHearsOnItsOwnThread() {
    List<Thread> heard = new ArrayList<>();
    PairOfThreads.each(100, i -> i, i -> heard.add(Thread.currentThread()));
    assertThat(heard).allMatch(thread -> thread == Thread.currentThread());
  }

  /** The other thread waits for this one, or it could be through before this one begins. */
  @Test
  void callerMayEndIt() {
    CountDownLatch called = new CountDownLatch(1);
    assertThatThrownBy(
            () ->
                PairOfThreads.each(
                    100_000,
                    i -> {
                      Uninterruptibles.awaitUninterruptibly(called);
                      return i;
                    },
                    i -> {
                      called.countDown();
                      throw new CancellationException("stopped");
                    }))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void failureOfEitherThreadIsThrown() {
    assertThatThrownBy(
            () ->
                PairOfThreads.each(
                    100,
                    i -> {
                      throw new IllegalStateException("broken");
                    },
                    i -> {}))
        .isInstanceOf(IllegalStateException.class);
  }
}
