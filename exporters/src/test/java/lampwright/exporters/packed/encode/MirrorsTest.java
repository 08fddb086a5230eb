package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class MirrorsTest {
  @Test
  void oneSampleIsItsOwnMirror() {
    assertThat(Mirrors.of(new int[] {5}, false)).containsExactly(0);
    assertThat(Mirrors.of(new int[] {5}, true)).containsExactly(0);
  }

  @Test
  void hillHasItsTopAndItsFootAsCentres() {
    assertThat(Mirrors.of(new int[] {0, 1, 2, 3, 2, 1}, false)).containsExactly(0, 3);
    assertThat(Mirrors.of(new int[] {0, 1, 2, 3, 2, 1}, true)).isEmpty();
    assertThat(Mirrors.of(new int[] {0, 1, 2, 2, 1, 0}, true)).containsExactly(0, 3);
  }

  /** Few values, so that mirrors are frequent; compared with looking at every centre. */
  @Property
  void centresAreThoseOfLookingEverywhere(
      @ForAll @Size(min = 1, max = 14) List<@IntRange(max = 2) Integer> samples,
      @ForAll boolean between) {
    int[] v = samples.stream().mapToInt(Integer::intValue).toArray();
    int by = between ? 1 : 0;
    List<Integer> want = new ArrayList<>();
    for (int c = 0; c < v.length; c++) {
      boolean same = true;
      for (int i = 0; i < v.length; i++) {
        same &= v[(c + i) % v.length] == v[Math.floorMod(c - by - i, v.length)];
      }
      if (same) {
        want.add(c);
      }
    }
    assertThat(Mirrors.of(v, between)).isEqualTo(want);
  }
}
