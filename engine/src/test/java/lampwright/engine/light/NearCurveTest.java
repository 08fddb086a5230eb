package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleConsumer;
import org.junit.jupiter.api.Test;

/** The quick form of curves against the curves themselves, whose powers are StrictMath's. */
class NearCurveTest {
  private static final int TRIES = 40_000;

  private final Random random = new Random(41);

  @Test
  void lightIsOffByNoMoreThanItSays() {
    for (Curve curve : curves()) {
      NearCurve near = NearCurve.of(curve);
      DoubleConsumer check =
          v -> {
            double off = Math.abs(near.light(v) - curve.light(v));
            if (!(off <= near.error())) {
              assertThat(off).as("%s at %s", curve, v).isLessThanOrEqualTo(near.error());
            }
          };
      for (int i = 0; i < TRIES; i++) {
        check.accept(random.nextDouble());
        check.accept(random.nextInt(256) / 255.0);
        check.accept(random.nextDouble() / 32);
      }
      for (int i = 0; i <= 1024; i++) {
        around(i / 1024.0, check);
      }
      around(0.04045, check);
      check.accept(Double.MIN_VALUE);
    }
  }

  @Test
  void errorLeavesNearlyEveryByteDecided() {
    for (Curve curve : curves()) {
      assertThat(NearCurve.of(curve).error()).as("%s", curve).isBetween(0.0, 3e-9);
    }
    // 2.2 x 1.2 x 0.2 x 0.8 / 24 x 64^1.8 / 2^40, by hand.
    assertThat(NearCurve.of(Curve.DEFAULT).error()).isBetween(2.8e-11, 2.9e-11);
  }

  @Test
  void curvesWithoutAPowerAreExact() {
    assertThat(NearCurve.of(new Curve.Linear()).error()).isZero();
    assertThat(NearCurve.of(new Curve.CieLightness()).error()).isZero();
    assertThat(NearCurve.of(new Curve.Power(1)).error()).isZero();
  }

  /** Each curve keeps its own table, whichever was asked for in between. */
  @Test
  void curvesAreNotMixedUp() {
    NearCurve first = NearCurve.of(new Curve.Power(2.2));
    NearCurve second = NearCurve.of(new Curve.Power(3));
    assertThat(first.light(0.5))
        .isEqualTo(StrictMath.pow(0.5, 2.2), org.assertj.core.api.Assertions.within(1e-10));
    assertThat(second.light(0.5)).isEqualTo(0.125, org.assertj.core.api.Assertions.within(1e-10));
  }

  private List<Curve> curves() {
    List<Curve> curves = new ArrayList<>();
    curves.add(new Curve.Srgb());
    curves.add(new Curve.CieLightness());
    curves.add(new Curve.Linear());
    for (double gamma :
        new double[] {1, Math.nextUp(1.0), 1.3, 2, 2.2, 2.4, 3, Math.nextDown(4.0), 4}) {
      curves.add(new Curve.Power(gamma));
    }
    for (int i = 0; i < 40; i++) {
      curves.add(new Curve.Power(1 + 3 * random.nextDouble()));
    }
    return curves;
  }

  private static void around(double v, DoubleConsumer check) {
    check.accept(v);
    if (v > 0) {
      check.accept(Math.nextDown(v));
    }
    if (v < 1) {
      check.accept(Math.nextUp(v));
    }
  }
}
