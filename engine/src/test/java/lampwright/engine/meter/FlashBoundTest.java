package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** No phases of lights give more flashes than the bound, as the flash caution itself counts. */
class FlashBoundTest {
  private static double[] square(int on, int off) {
    double[] light = new double[on + off];
    for (int i = 0; i < on; i++) {
      light[i] = 1;
    }
    return light;
  }

  private static int counted(
      List<double[]> lights, boolean loop, int[] phases, int frames, int rate) {
    double[] xyz = new double[3 * frames];
    for (int f = 0; f < frames; f++) {
      for (int i = 0; i < phases.length; i++) {
        double[] light = lights.get(i);
        int at = f + phases[i];
        xyz[3 * f + 1] += light[loop ? at % light.length : Math.min(at, light.length - 1)];
      }
    }
    return FlashCaution.measure(xyz, rate, false).general().flashes();
  }

  private static int bound(List<double[]> lights, boolean loop, int rate) {
    return FlashBound.perSecond(
        lights.stream().map(light -> new FlashBound.Light(light, loop)).toList(), rate);
  }

  @Test
  void lightThatIsSteadyNeverFlashes() {
    assertThat(bound(List.of(), true, 50)).isZero();
    assertThat(bound(List.of(new double[] {0.5}, new double[] {0, 0}), false, 50)).isZero();
  }

  // Twice a second each; half a period apart they are four.
  @Test
  void twoFlashersHalfAPeriodApartReachTheBound() {
    List<double[]> lights = List.of(square(5, 20), square(5, 20));

    assertThat(bound(lights.subList(0, 1), true, 50)).isEqualTo(2);
    assertThat(counted(lights, true, new int[] {0, 12}, 500, 50)).isEqualTo(4);
    assertThat(bound(lights, true, 50)).isEqualTo(4);
  }

  // A staircase up and one down, half a step apart: each moves one way alone, the sum to and fro.
  @Test
  void lightsThatOnlyRiseAndOnlyFallCanFlashTogether() {
    double[] up = new double[50];
    double[] down = new double[50];
    for (int i = 0; i < 50; i++) {
      int risen = i / 10;
      int fallen = (i + 5) / 10 % 5;
      up[i] = risen;
      down[i] = 4 - fallen;
    }
    List<double[]> lights = List.of(up, down);

    int counted = counted(lights, false, new int[] {0, 0}, 50, 50);

    assertThat(counted).isGreaterThan(2);
    assertThat(bound(lights, false, 50)).isGreaterThanOrEqualTo(counted);
  }

  // A tenth of the greatest is a change, less is none.
  @Test
  void whatIsLessThanATenthIsNoFlash() {
    assertThat(bound(List.of(square(1, 1), new double[] {9.1}), true, 50)).isZero();
    assertThat(bound(List.of(square(1, 1), new double[] {8.9}), true, 50)).isPositive();
  }

  @Property(tries = 3000, seed = "38")
  void noPhasesGiveMore(@ForAll Random random) {
    int rate = 5 + random.nextInt(20);
    List<double[]> lights = new ArrayList<>();
    int count = 1 + random.nextInt(4);
    for (int i = 0; i < count; i++) {
      double[] light = new double[1 + random.nextInt(3 * rate)];
      double step = random.nextDouble();
      boolean smooth = random.nextBoolean();
      for (int f = 0; f < light.length; f++) {
        light[f] =
            smooth && f > 0
                ? Math.max(0, Math.min(1, light[f - 1] + step * (random.nextDouble() - 0.5)))
                : random.nextInt(3) * 0.5;
      }
      lights.add(light);
    }
    int[] phases = new int[count];
    for (int i = 0; i < count; i++) {
      phases[i] = random.nextInt(100);
    }

    assertThat(counted(lights, true, phases, 20 * rate, rate))
        .isLessThanOrEqualTo(bound(lights, true, rate));
  }
}
