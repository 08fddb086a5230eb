package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** A curve while samples are put on it, by hand and against an array of it. */
class CurveSketchTest {
  @Test
  void otherValueIsRefusedWhereOneIsKnown() {
    CurveSketch sketch = new CurveSketch(3);
    assertThat(sketch.put(1, 7)).isTrue();
    assertThat(sketch.put(1, 7)).isTrue();
    assertThat(sketch.put(1, 8)).isFalse();
    assertThat(sketch.samples().filled(1)).containsExactly(7, 7, 7);
  }

  @Test
  void nothingIsKnownOnceItIsCleared() {
    CurveSketch sketch = new CurveSketch(130);
    for (int place : new int[] {0, 63, 64, 127, 128, 129}) {
      sketch.put(place, place);
    }
    sketch.clear();
    assertThat(sketch.put(64, 5)).isTrue();
    assertThat(sketch.samples().variation()).isZero();
    int[] five = new int[130];
    Arrays.fill(five, 5);
    assertThat(sketch.samples().filled(1)).containsExactly(five);
  }

  /** The same as an array that is walked along. */
  @Property
  void samplesAreThoseThatWerePut(
      @ForAll @Size(min = 1, max = 200) List<@IntRange(max = 199) Integer> places) {
    CurveSketch sketch = new CurveSketch(200);
    int[] curve = new int[200];
    Arrays.fill(curve, -1);
    for (int i = 0; i < places.size(); i++) {
      int place = places.get(i);
      int value = i % 5;
      boolean fits = curve[place] < 0 || curve[place] == value;
      assertThat(sketch.put(place, value)).isEqualTo(fits);
      curve[place] = fits ? value : curve[place];
    }
    assertThat(sketch.samples().filled(1)).containsExactly(KnownSamplesTest.filled(curve));
  }
}
