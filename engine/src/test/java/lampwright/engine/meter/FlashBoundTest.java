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
  private static FlashBound.Light square(int on, int off) {
    double[] light = new double[on + off];
    for (int i = 0; i < on; i++) {
      light[i] = 1;
    }
    return new FlashBound.Light(light, true);
  }

  private static int counted(List<FlashBound.Light> lights, int[] phases, int frames, int rate) {
    double[] xyz = new double[3 * frames];
    for (int f = 0; f < frames; f++) {
      for (int i = 0; i < phases.length; i++) {
        FlashBound.Light light = lights.get(i);
        int at = f + phases[i];
        int length = light.luminance().length;
        double now = light.luminance()[light.loops() ? at % length : Math.min(at, length - 1)];
        xyz[3 * f + 1] += now;
      }
    }
    return FlashCaution.measure(xyz, rate, false).general().flashes();
  }

  @Test
  void lightThatIsSteadyNeverFlashes() {
    assertThat(FlashBound.perSecond(List.of(), 50)).isZero();
    FlashBound.Light steady = new FlashBound.Light(new double[] {0.5}, true);
    FlashBound.Light dark = new FlashBound.Light(new double[] {0, 0}, false);
    assertThat(FlashBound.perSecond(List.of(steady, dark), 50)).isZero();
  }

  // Twice a second each; half a period apart they are four.
  @Test
  void twoFlashersHalfAPeriodApartReachTheBound() {
    List<FlashBound.Light> lights = List.of(square(5, 20), square(5, 20));

    assertThat(FlashBound.perSecond(lights.subList(0, 1), 50)).isEqualTo(2);
    assertThat(counted(lights, new int[] {0, 12}, 500, 50)).isEqualTo(4);
    assertThat(FlashBound.perSecond(lights, 50)).isEqualTo(4);
  }

  // A staircase up and one down, half a step apart: each moves one way alone, the sum to and fro.
  @Test
  void lightsThatOnlyRiseAndOnlyFallCanFlashTogether() {
    double[] up = new double[50];
    double[] down = new double[50];
    for (int i = 0; i < 50; i++) {
      up[i] = i / 10;
      down[i] = 4 - (i + 5) / 10 % 5;
    }
    List<FlashBound.Light> lights =
        List.of(new FlashBound.Light(up, false), new FlashBound.Light(down, false));

    int counted = counted(lights, new int[] {0, 0}, 50, 50);

    assertThat(counted).isGreaterThan(2);
    assertThat(FlashBound.perSecond(lights, 50)).isGreaterThanOrEqualTo(counted);
  }

  // A tenth of the greatest is a change, less is none.
  @Test
  void whatIsLessThanATenthIsNoFlash() {
    FlashBound.Light steady = new FlashBound.Light(new double[] {9.1}, true);
    assertThat(FlashBound.perSecond(List.of(square(1, 1), steady), 50)).isZero();
    FlashBound.Light dimmer = new FlashBound.Light(new double[] {8.9}, true);
    assertThat(FlashBound.perSecond(List.of(square(1, 1), dimmer), 50)).isPositive();
  }

  @Property(tries = 3000, seed = "38")
  void noPhasesGiveMore(@ForAll Random random) {
    int rate = 5 + random.nextInt(20);
    List<FlashBound.Light> lights = new ArrayList<>();
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
      lights.add(new FlashBound.Light(light, true));
    }
    int[] phases = new int[count];
    for (int i = 0; i < count; i++) {
      phases[i] = random.nextInt(100);
    }

    assertThat(counted(lights, phases, 20 * rate, rate))
        .isLessThanOrEqualTo(FlashBound.perSecond(lights, rate));
  }
}
