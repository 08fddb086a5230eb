package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The flash caution against a second one, written plainly, on light of every kind. */
class PlainFlashesComparisonTest {
  private static final double[] RATES = {
    1, 2.5, 7.5, 10, 12.5, 23.976, 25, 29.97, 30, 47.95, 50, 59.94, 60, 99.5, 100
  };

  // x, y and mcd of emitters: the test pixel of FACTS.md, then deep ones that sRGB can't show.
  private static final double[][] EMITTERS = {
    {0.700, 0.299, 405},
    {0.170, 0.700, 690},
    {0.136, 0.050, 190},
    {0.3451, 0.3516, 2000},
    {0.7347, 0.2653, 100},
    {0.600, 0.380, 300},
    {0.560, 0.250, 200},
    {0.167, 0.009, 30}
  };

  private final Random random = new Random(1812);

  private void add(double[] xyz, int frame, int emitter, double drive) {
    double[] e = EMITTERS[emitter];
    xyz[3 * frame] += drive * e[2] / e[1] * e[0];
    xyz[3 * frame + 1] += drive * e[2];
    xyz[3 * frame + 2] += drive * e[2] / e[1] * Math.max(0, 1 - e[0] - e[1]);
  }

  /** Light of a few emitters: steps, holds, ramps, noise, few levels or many. */
  private double[] light(int frames) {
    double[] xyz = new double[3 * frames];
    int emitters = 1 + random.nextInt(3);
    for (int e = 0; e < emitters; e++) {
      int emitter = random.nextInt(EMITTERS.length);
      int levels = random.nextBoolean() ? 2 + random.nextInt(4) : 256;
      double hold = random.nextDouble();
      double ramp = random.nextDouble() < 0.4 ? 0.02 + 0.3 * random.nextDouble() : 1;
      double aim = 0;
      double now = 0;
      for (int i = 0; i < frames; i++) {
        if (i == 0 || random.nextDouble() > hold) {
          aim = random.nextInt(levels) / (double) (levels - 1);
        }
        now += Math.max(-ramp, Math.min(ramp, aim - now));
        add(xyz, i, emitter, Math.floor(255 * now + 0.5) / 255);
      }
    }
    return xyz;
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void bothCountTheSame(boolean loop) {
    int flashing = 0;
    int flashingRed = 0;
    for (int i = 0; i < 6000; i++) {
      double fps = RATES[random.nextInt(RATES.length)];
      int frames = 1 + random.nextInt(random.nextBoolean() ? 12 : 130);
      double[] xyz = light(frames);

      FlashCaution caution = FlashCaution.measure(xyz, fps, loop);

      String what = "case " + i + ", " + frames + " frames at " + fps;
      int general = PlainFlashes.general(xyz, fps, loop);
      int red = PlainFlashes.red(xyz, fps, loop);
      assertThat(caution.general().flashes()).as(what).isEqualTo(general);
      assertThat(caution.red().flashes()).as(what + ", red").isEqualTo(red);
      flashing += general > 3 ? 1 : 0;
      flashingRed += red > 3 ? 1 : 0;
    }
    assertThat(flashing).isBetween(500, 5500);
    assertThat(flashingRed).isGreaterThan(150);
  }

  /** W3C WCAG 2.2 knows no unit of light: a brighter scene flashes as a dim one does. */
  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 0.004, 0.3, 17})
  void scalingAllLightChangesNothing(double factor) {
    for (int i = 0; i < 500; i++) {
      double[] xyz = light(60);
      double[] scaled = new double[xyz.length];
      for (int k = 0; k < xyz.length; k++) {
        scaled[k] = factor * xyz[k];
      }
      assertThat(FlashCaution.measure(scaled, 30, true))
          .isEqualTo(FlashCaution.measure(xyz, 30, true));
    }
  }

  /** A loop flashes as often whichever of its frames is the first. */
  @ParameterizedTest
  @ValueSource(ints = {1, 7, 31})
  void seamMakesNoDifference(int shift) {
    for (int i = 0; i < 1000; i++) {
      double[] xyz = light(50);
      double[] turned = new double[xyz.length];
      for (int k = 0; k < xyz.length; k++) {
        turned[k] = xyz[(k + 3 * shift) % xyz.length];
      }
      FlashCaution of = FlashCaution.measure(xyz, 25, true);
      FlashCaution ofTurned = FlashCaution.measure(turned, 25, true);
      assertThat(ofTurned.general().flashes()).isEqualTo(of.general().flashes());
      assertThat(ofTurned.red().flashes()).isEqualTo(of.red().flashes());
    }
  }
}
