package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Random;
import java.util.stream.DoubleStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/**
 * What must hold of every package and target. The checks work from the definitions: X, Y and Z of
 * emitters add up, drives are 0 to 1.
 */
class GamutPropertyTest {
  private static final int SLOTS = Mixer.SLOTS;

  @Provide
  Arbitrary<Map<EmitterKind, Emitter>> packages() {
    return Packages.any();
  }

  @Provide
  Arbitrary<Long> seeds() {
    return Arbitraries.longs();
  }

  @Property(tries = 2000, seed = "31")
  void mixComesBackAtItsTarget(
      @ForAll("packages") Map<EmitterKind, Emitter> emitters, @ForAll("seeds") long seed) {
    double[] some = randomDrives(emitters, new Random(seed));
    Chromaticity target = chromaticity(emitters, some);

    MatchedMix mix = new Gamut(emitters).brightest(target);
    double[] drives = drives(mix);

    assertThat(mix.reachesTarget()).isTrue();
    assertThat(chromaticity(emitters, drives).x()).isCloseTo(target.x(), within(1e-6));
    assertThat(chromaticity(emitters, drives).y()).isCloseTo(target.y(), within(1e-6));
    assertThat(DoubleStream.of(drives)).allMatch(d -> d >= 0 && d <= 1);
    assertThat(mix.millicandela())
        .isCloseTo(luminance(emitters, drives), within(1e-6 * mix.millicandela()));
  }

  /** A walk at random through all drives of the target's chromaticity meets no brighter one. */
  @Property(tries = 1000, seed = "32")
  void noOtherMixOfTheChromaticityIsBrighter(
      @ForAll("packages") Map<EmitterKind, Emitter> emitters, @ForAll("seeds") long seed) {
    Random random = new Random(seed);
    double[] walker = randomDrives(emitters, random);
    Chromaticity target = chromaticity(emitters, walker);
    double best = new Gamut(emitters).brightest(target).millicandela();

    for (int step = 0; step < 50; step++) {
      assertThat(luminance(emitters, walker)).isLessThanOrEqualTo(best * (1 + 1e-9));
      move(walker, nullDirection(emitters, target, random), random);
    }
  }

  /**
   * The optimum of a linear programme lies at a vertex: two drives at 0 or 1, and the other two
   * solved from the two equations of chromaticity. Here all are tried, without the mixer's weights.
   */
  @Property(tries = 2000, seed = "33")
  void noVertexIsBrighter(
      @ForAll("packages") Map<EmitterKind, Emitter> emitters, @ForAll("seeds") long seed) {
    Chromaticity target = chromaticity(emitters, randomDrives(emitters, new Random(seed)));
    double best = new Gamut(emitters).brightest(target).millicandela();

    double brightest = 0;
    for (int i = 0; i < SLOTS; i++) {
      for (int j = i + 1; j < SLOTS; j++) {
        for (int corner = 0; corner < 4; corner++) {
          brightest = Math.max(brightest, vertex(emitters, target, i, j, corner));
        }
      }
    }
    // A vertex may lie out of bounds by rounding.
    assertThat(best).isCloseTo(brightest, within(1e-6 * brightest));
  }

  @Property(tries = 2000, seed = "34")
  void noMixIsNearerToAChromaticityOutOfReach(
      @ForAll("packages") Map<EmitterKind, Emitter> emitters, @ForAll("seeds") long seed) {
    Random random = new Random(seed);
    double y = 0.01 + 0.98 * random.nextDouble();
    Chromaticity target = new Chromaticity((1 - y) * random.nextDouble(), y);
    MatchedMix mix = new Gamut(emitters).brightest(target);
    double[] drives = drives(mix);

    assertThat(chromaticity(emitters, drives).distanceTo(mix.reached())).isLessThan(1e-6);
    assertThat(target.distanceTo(mix.reached())).isCloseTo(mix.distance(), within(1e-9));
    assertThat(DoubleStream.of(drives)).allMatch(d -> d >= 0 && d <= 1);
    for (int n = 0; n < 100; n++) {
      double[] other = randomDrives(emitters, random);
      if (n % 2 == 0) {
        // Mixes of two emitters reach the border itself.
        other[random.nextInt(SLOTS)] = 0;
        other[random.nextInt(SLOTS)] = 0;
      }
      if (luminance(emitters, other) > 0) {
        assertThat(target.distanceTo(chromaticity(emitters, other)))
            .isGreaterThanOrEqualTo(mix.distance() - 1e-9);
      }
    }
  }

  @Property(tries = 500, seed = "35")
  void mixMovesLittleWhenItsTargetDoes(@ForAll("seeds") long seed) {
    Gamut gamut = new Gamut(Packages.bench());
    Random random = new Random(seed);
    double kelvin = 2000 + 20000 * random.nextDouble();
    double[] one = drives(gamut.brightest(Planck.chromaticity(kelvin)));
    double[] two = drives(gamut.brightest(Planck.chromaticity(kelvin + 0.01)));

    assertThat(one).containsExactly(two, within(0.001));
  }

  private static double vertex(
      Map<EmitterKind, Emitter> emitters, Chromaticity target, int i, int j, int corner) {
    double[] drives = new double[SLOTS];
    int bit = 1;
    for (int k = 0; k < SLOTS; k++) {
      if (k != i && k != j) {
        drives[k] = (corner & bit) != 0 ? 1 : 0;
        bit *= 2;
      }
    }
    double[][] row = equations(emitters, target);
    double[] right = new double[2];
    for (int e = 0; e < 2; e++) {
      for (int k = 0; k < SLOTS; k++) {
        right[e] -= row[e][k] * drives[k];
      }
    }
    double det = row[0][i] * row[1][j] - row[0][j] * row[1][i];
    drives[i] = (right[0] * row[1][j] - right[1] * row[0][j]) / det;
    drives[j] = (row[0][i] * right[1] - row[1][i] * right[0]) / det;
    for (double drive : drives) {
      if (!(drive >= -1e-9 && drive <= 1 + 1e-9)) {
        return 0;
      }
    }
    return luminance(emitters, drives);
  }

  /** Two rows that a mix of the target makes 0: X - x S and Y - y S, with S = X + Y + Z. */
  private static double[][] equations(Map<EmitterKind, Emitter> emitters, Chromaticity target) {
    double[][] row = new double[2][SLOTS];
    emitters.forEach(
        (kind, emitter) -> {
          double sum = emitter.millicandela() / emitter.chromaticity().y();
          row[0][kind.slot()] = sum * (emitter.chromaticity().x() - target.x());
          row[1][kind.slot()] = sum * (emitter.chromaticity().y() - target.y());
        });
    return row;
  }

  /** A direction at random in which the chromaticity stays. */
  private static double[] nullDirection(
      Map<EmitterKind, Emitter> emitters, Chromaticity target, Random random) {
    double[][] row = equations(emitters, target);
    remove(row[0], row[1]);
    double[] direction = new double[SLOTS];
    for (int i = 0; i < SLOTS; i++) {
      direction[i] = random.nextGaussian();
    }
    if (!emitters.containsKey(EmitterKind.WHITE)) {
      direction[3] = 0;
    }
    remove(row[0], direction);
    remove(row[1], direction);
    return direction;
  }

  private static void remove(double[] what, double[] from) {
    double dot = 0;
    double square = 0;
    for (int i = 0; i < SLOTS; i++) {
      dot += what[i] * from[i];
      square += what[i] * what[i];
    }
    for (int i = 0; i < SLOTS; i++) {
      from[i] -= square == 0 ? 0 : what[i] * dot / square;
    }
  }

  private static void move(double[] walker, double[] direction, Random random) {
    double least = -1e9;
    double most = 1e9;
    for (int i = 0; i < SLOTS; i++) {
      if (Math.abs(direction[i]) > 1e-12) {
        double toZero = -walker[i] / direction[i];
        double toOne = (1 - walker[i]) / direction[i];
        least = Math.max(least, Math.min(toZero, toOne));
        most = Math.min(most, Math.max(toZero, toOne));
      }
    }
    if (least > most) {
      return;
    }
    // Now and then to the very end, where the brightest mix must lie.
    double step = random.nextInt(4) == 0 ? most : least + (most - least) * random.nextDouble();
    for (int i = 0; i < SLOTS; i++) {
      walker[i] = Math.min(1, Math.max(0, walker[i] + step * direction[i]));
    }
  }

  private static double[] randomDrives(Map<EmitterKind, Emitter> emitters, Random random) {
    double[] drives = new double[SLOTS];
    for (EmitterKind kind : emitters.keySet()) {
      drives[kind.slot()] = random.nextDouble();
    }
    return drives;
  }

  private static double[] drives(MatchedMix mix) {
    Colour.Drive d = mix.drives();
    return new double[] {d.r(), d.g(), d.b(), d.w()};
  }

  private static double luminance(Map<EmitterKind, Emitter> emitters, double[] drives) {
    return emitters.entrySet().stream()
        .mapToDouble(e -> drives[e.getKey().slot()] * e.getValue().millicandela())
        .sum();
  }

  private static Chromaticity chromaticity(Map<EmitterKind, Emitter> emitters, double[] drives) {
    double x = 0;
    double y = 0;
    double all = 0;
    for (Map.Entry<EmitterKind, Emitter> e : emitters.entrySet()) {
      Chromaticity c = e.getValue().chromaticity();
      double sum = drives[e.getKey().slot()] * e.getValue().millicandela() / c.y();
      x += sum * c.x();
      y += sum * c.y();
      all += sum;
    }
    return new Chromaticity(x / all, y / all);
  }
}
