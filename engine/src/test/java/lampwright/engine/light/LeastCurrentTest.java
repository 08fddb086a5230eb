package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.junit.jupiter.api.Test;

/** Mixes for the least current, against a general linear-programme solver (Commons Math 3.6). */
class LeastCurrentTest {

  /** A pixel with three or four emitters whose currents differ, and white anywhere among them. */
  @Provide
  Arbitrary<Map<EmitterKind, FittedEmitter>> pixels() {
    Arbitrary<Double> milliamps = Arbitraries.doubles().between(0, 40).ofScale(2);
    return Packages.any()
        .flatMap(
            emitters ->
                milliamps
                    .list()
                    .ofSize(4)
                    .map(
                        currents -> {
                          Map<EmitterKind, FittedEmitter> fitted = new EnumMap<>(EmitterKind.class);
                          emitters.forEach(
                              (kind, emitter) ->
                                  fitted.put(
                                      kind, new FittedEmitter(emitter, currents.get(kind.slot()))));
                          return fitted;
                        }));
  }

  /** A chromaticity that the pixel mixes surely: that of drives drawn by chance. */
  private static Chromaticity inside(Map<EmitterKind, FittedEmitter> pixel, long seed) {
    Random random = new Random(seed);
    double[] drives = new double[4];
    pixel.keySet().forEach(kind -> drives[kind.slot()] = 0.05 + 0.95 * random.nextDouble());
    return new Emission(FittedEmitter.light(pixel)).chromaticity(drives, 0).orElseThrow();
  }

  private static double[] mix(
      Map<EmitterKind, FittedEmitter> pixel, Chromaticity point, double light) {
    Gamut gamut = new Gamut(FittedEmitter.light(pixel));
    double[] drives = new double[4];
    gamut.unsplit(point.x(), point.y(), Double.POSITIVE_INFINITY, drives, 0);
    new LeastCurrent(gamut, pixel).write(drives, 0, light, drives, 0);
    return drives;
  }

  private static double milliamps(Map<EmitterKind, FittedEmitter> pixel, double[] drives) {
    return pixel.entrySet().stream()
        .mapToDouble(e -> e.getValue().milliamps() * drives[e.getKey().slot()])
        .sum();
  }

  /** The least current at a chromaticity and luminance, by the simplex method. */
  private static double leastMilliamps(Map<EmitterKind, FittedEmitter> pixel, double[] xyz) {
    List<EmitterKind> kinds = List.copyOf(pixel.keySet());
    double[] cost = kinds.stream().mapToDouble(k -> pixel.get(k).milliamps()).toArray();
    List<LinearConstraint> constraints = new ArrayList<>();
    for (int axis = 0; axis < 3; axis++) {
      double[] row = new double[kinds.size()];
      for (int i = 0; i < row.length; i++) {
        Emitter light = pixel.get(kinds.get(i)).light();
        // Scaled to the luminance wanted, so that the solver's own tolerance suits.
        row[i] = light.chromaticity().xyz(light.millicandela())[axis] / xyz[1];
      }
      constraints.add(new LinearConstraint(row, Relationship.EQ, xyz[axis] / xyz[1]));
    }
    for (int i = 0; i < kinds.size(); i++) {
      double[] row = new double[kinds.size()];
      row[i] = 1;
      constraints.add(new LinearConstraint(row, Relationship.LEQ, 1));
    }
    return new SimplexSolver(1e-9, 20, 1e-12)
        .optimize(
            new MaxIter(1000),
            new LinearObjectiveFunction(cost, 0),
            new LinearConstraintSet(constraints),
            GoalType.MINIMIZE,
            new NonNegativeConstraint(true))
        .getValue();
  }

  @Property(tries = 2000, seed = "61")
  void mixGivesItsChromaticityAndLuminance(
      @ForAll("pixels") Map<EmitterKind, FittedEmitter> pixel,
      @ForAll long seed,
      @ForAll @Scale(3) @DoubleRange(min = 0.001, max = 1) double light) {
    Chromaticity point = inside(pixel, seed);
    double full = new Gamut(FittedEmitter.light(pixel)).brightest(point).millicandela();
    double[] drives = mix(pixel, point, light);
    Emission emission = new Emission(FittedEmitter.light(pixel));
    for (double drive : drives) {
      assertThat(drive).isBetween(0.0, 1.0);
    }
    assertThat(emission.luminance(drives, 0) / (light * full)).isCloseTo(1, within(1e-9));
    Chromaticity emitted = emission.chromaticity(drives, 0).orElseThrow();
    assertThat(emitted.x()).isCloseTo(point.x(), within(1e-9));
    assertThat(emitted.y()).isCloseTo(point.y(), within(1e-9));
  }

  @Property(tries = 1000, seed = "62")
  void noMixDrawsLess(
      @ForAll("pixels") Map<EmitterKind, FittedEmitter> pixel,
      @ForAll long seed,
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double light) {
    double[] drives = mix(pixel, inside(pixel, seed), light);
    double[] xyz = new double[3];
    new Emission(FittedEmitter.light(pixel)).xyz(drives, 0, xyz, 0);
    double least = leastMilliamps(pixel, xyz);
    assertThat(milliamps(pixel, drives)).isCloseTo(least, within(1e-6 * (1 + least)));
  }

  /** Mixes drawn by chance along the line of all that give the same light. */
  @Property(tries = 500, seed = "63")
  void noMixFoundByChanceDrawsLess(
      @ForAll("pixels") Map<EmitterKind, FittedEmitter> pixel,
      @ForAll long seed,
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double light) {
    if (pixel.size() < 4) {
      return;
    }
    double[] drives = mix(pixel, inside(pixel, seed), light);
    double[] along = new Gamut(FittedEmitter.light(pixel)).slope();
    Random random = new Random(seed);
    for (int i = 0; i < 100; i++) {
      double t = (random.nextDouble() - 0.5) / 50;
      double[] other = drives.clone();
      boolean possible = true;
      for (int slot = 0; slot < 4; slot++) {
        other[slot] += t * along[slot] / 1e-3;
        possible &= other[slot] >= 0 && other[slot] <= 1;
      }
      if (possible) {
        assertThat(milliamps(pixel, other)).isGreaterThan(milliamps(pixel, drives) - 1e-9);
      }
    }
  }

  /** By hand: pixel of docs/formats.md, white (0.3451, 0.3516) is the white die's own. */
  @Test
  void whiteOfTheWhiteDieIsItsAlone() {
    double[] drives = mix(Packages.fitted(Packages.bench()), new Chromaticity(0.3451, 0.3516), 0.5);
    // All four at full give 2,000 mcd of white and what of r, g and b mixes the same: more than
    // half of that is within the white die's reach.
    assertThat(drives[0]).isZero();
    assertThat(drives[1]).isZero();
    assertThat(drives[2]).isZero();
    assertThat(drives[3]).isBetween(0.5, 1.0);
  }

  @Test
  void whiteThatDrawsMoreThanItsMixIsUsedLeast() {
    Map<EmitterKind, FittedEmitter> pixel = Packages.fitted(Packages.bench());
    Emitter white = pixel.get(EmitterKind.WHITE).light();
    pixel.put(EmitterKind.WHITE, new FittedEmitter(white, 10_000));
    assertThat(mix(pixel, new Chromaticity(0.3451, 0.3516), 0.2)[3]).isZero();
  }

  @Property(tries = 40, seed = "64")
  void moreLightIsNeverAJump(
      @ForAll("pixels") Map<EmitterKind, FittedEmitter> pixel, @ForAll long seed) {
    Chromaticity point = inside(pixel, seed);
    assertThat(mix(pixel, point, 0)).containsOnly(0);
    for (int i = 0; i < 1000; i++) {
      double[] now = mix(pixel, point, i / 1000.0);
      double[] next = mix(pixel, point, i / 1000.0 + 1e-9);
      assertThat(next).containsExactly(now, within(1e-4));
    }
  }

  /** Between any two amounts of light, far apart or close. */
  @Property(tries = 3000)
  void noDriveChangesBySteeperThanIsSaid(
      @ForAll("pixels") Map<EmitterKind, FittedEmitter> pixel,
      @ForAll long seed,
      @ForAll @DoubleRange(min = 0, max = 1) double light,
      @ForAll @DoubleRange(min = 0, max = 1) double other,
      @ForAll boolean close) {
    Gamut gamut = new Gamut(FittedEmitter.light(pixel));
    Chromaticity target = inside(pixel, seed);
    double[] unsplit = new double[4];
    gamut.unsplit(target.x(), target.y(), Double.POSITIVE_INFINITY, unsplit, 0);
    LeastCurrent rule = new LeastCurrent(gamut, pixel);
    double apart = (other - light) * (close ? 1e-6 : 1);
    double[] one = new double[4];
    double[] two = new double[4];
    rule.write(unsplit, 0, light, one, 0);
    rule.write(unsplit, 0, light + apart, two, 0);
    double steepness = rule.steepness(unsplit);
    for (int i = 0; i < 4; i++) {
      // Besides the light, what is settled at 0 or 1, and rounding.
      double most = steepness * (Math.abs(apart) + 0x1p-49) + 2e-12;
      assertThat(Math.abs(one[i] - two[i])).isLessThanOrEqualTo(most);
    }
  }
}
