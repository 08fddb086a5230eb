package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Pairs of events in a second, by hand and against looking at every second. */
class SecondWindowTest {
  @Test
  void firstOfEqualSecondsIsTold() {
    SecondWindow window = new SecondWindow(50);
    assertThat(window.mostPairs()).isZero();
    assertThat(window.mostStart()).isZero();
    for (int frame : new int[] {10, 15, 100, 105, 300}) {
      window.add(frame);
    }
    assertThat(window.mostPairs()).isEqualTo(1);
    assertThat(window.mostStart()).isEqualTo(10);
  }

  /** Frames 0 and 49 are in one second of 50 frames, 0 and 50 are not. */
  @Test
  void secondHasSoManyFrames() {
    SecondWindow near = new SecondWindow(50);
    near.add(0);
    near.add(49);
    assertThat(near.mostPairs()).isEqualTo(1);
    SecondWindow far = new SecondWindow(50);
    far.add(0);
    far.add(50);
    assertThat(far.mostPairs()).isZero();
  }

  @Test
  void framesOfASecondAreRoundedUp() {
    assertThat(SecondWindow.frames(50)).isEqualTo(50);
    assertThat(SecondWindow.frames(29.97)).isEqualTo(30);
    assertThat(SecondWindow.frames(0.5)).isEqualTo(1);
  }

  @Property
  void secondWithMostIsFound(
      @ForAll @Size(max = 60) List<@IntRange(max = 120) Integer> some,
      @ForAll @IntRange(min = 1, max = 60) int length) {
    TreeSet<Integer> events = new TreeSet<>(some);
    SecondWindow window = new SecondWindow(length);
    events.forEach(window::add);
    int most = 0;
    int start = 0;
    for (int first : events) {
      int pairs = events.subSet(first, first + length).size() / 2;
      if (pairs > most) {
        most = pairs;
        start = first;
      }
    }
    assertThat(window.mostPairs()).isEqualTo(most);
    assertThat(window.mostStart()).isEqualTo(start);
  }
}
