package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
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

  @Test
  void callerMayEndIt() {
    assertThatThrownBy(
            () ->
                PairOfThreads.each(
                    100_000,
                    i -> i,
                    i -> {
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
