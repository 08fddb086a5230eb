package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against the distance to each point by itself: more than 0.2 of CIE 1976 u'v' (W3C WCAG 2.2). */
class FarPointsTest {
  private static final double FAR = 0.2;

  /** Many in a square of so many, about a middle; asked about all around it. */
  @Property(tries = 400, seed = "11")
  void reachesWhatIsFartherFromOneOfThem(
      @ForAll @IntRange(min = 1, max = 300) int count,
      @ForAll @DoubleRange(min = 0, max = 0.3) double width,
      @ForAll Random random) {
    FarPoints points = new FarPoints();
    List<double[]> all = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double[] next = {
        0.3 + width * (random.nextDouble() - 0.5), 0.4 + width * (random.nextDouble() - 0.5)
      };
      points.add(next[0], next[1]);
      all.add(next);
      double u = 0.6 * random.nextDouble();
      double v = 0.1 + 0.6 * random.nextDouble();
      double farthest =
          all.stream().mapToDouble(p -> Math.hypot(u - p[0], v - p[1])).max().orElse(0);
      assertThat(points.reach(u, v)).as("%s of %s", farthest, all.size()).isEqualTo(farthest > FAR);
    }
  }

  // From the point (0.2, 0.3): 0.12 and 0.16 make 0.2, which is not farther.
  @ParameterizedTest
  @CsvSource({
    "0.32, 0.46, false",
    "0.32, 0.461, true",
    "0.08, 0.139, true",
    "0.4, 0.3, false",
    "0.401, 0.3, true",
    "0.2, 0.099, true",
    "0.2, 0.3, false"
  })
  void farIsMoreThanAFifth(double u, double v, boolean far) {
    FarPoints points = new FarPoints();
    assertThat(points.reach(u, v)).isFalse();
    points.add(0.2, 0.3);
    assertThat(points.reach(u, v)).isEqualTo(far);
    points.clear();
    assertThat(points.reach(u, v)).isFalse();
    points.add(u, v);
    assertThat(points.reach(u, v)).isFalse();
    assertThat(points.reach(0.2, 0.3)).isEqualTo(far);
  }

  /** What comes back is kept once; of many the corners of their hull stay. */
  @Test
  void fewPointsAreKept() {
    FarPoints points = new FarPoints();
    for (int i = 0; i < 1000; i++) {
      points.add(0.2 + 0.05 * (i % 3), 0.3);
    }
    assertThat(points.size()).isEqualTo(3);
    points.clear();
    // A lattice of 100 x 100 in a square with four corners, row by row.
    for (int i = 0; i < 10_000; i++) {
      int row = i / 100;
      points.add(0.2 + 0.001 * (i % 100), 0.3 + 0.001 * row);
    }
    assertThat(points.size()).isLessThan(200);
    // To the far corner (0.299, 0.399): 0.142 and 0.140 either way, times the root of 2.
    assertThat(points.reach(0.2 - 0.043, 0.3 - 0.043)).isTrue();
    assertThat(points.reach(0.2 - 0.041, 0.3 - 0.041)).isFalse();
  }
}
