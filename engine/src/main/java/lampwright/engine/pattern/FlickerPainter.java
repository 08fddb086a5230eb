package lampwright.engine.pattern;

import java.math.BigDecimal;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Mix;
import lampwright.engine.light.Mixer;
import lampwright.engine.light.NearCurve;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/** Paints a {@link Flicker}. The noise of a turn is kept while the turn lasts. */
final class FlickerPainter implements Painter {
  private static final double UNIT = 0x1p-53;
  private static final long GOLDEN = 0x9E3779B97F4A7C15L;

  // What the rule of least current makes 0 or 1 is off by less than this, at either end.
  private static final double SETTLED = 2e-12;

  // A mix this steep would leave hardly a byte decided.
  private static final double MOST_ERROR = 1e-6;

  private final Mix[] full;
  private final double level;
  private final double depth;
  private final Curve curve;
  private final NearCurve near;
  private final double error;
  private final Period turn;
  private final long[] seeds;
  private final double[] left;
  private final double[] step;
  private final double[] levels;
  private long known = -1;

  FlickerPainter(Flicker flicker, PaintContext context) {
    full = context.mixes(flicker.look().colour());
    level = flicker.look().level();
    depth = flicker.depth();
    curve = context.curve();
    near = NearCurve.of(curve);
    turn = new Period(Ratio.of(1000).over(Ratio.of(flicker.rateHz())), BigDecimal.ZERO);
    seeds = new long[full.length];
    for (int k = 0; k < full.length; k++) {
      seeds[k] = mix(flicker.seed() + GOLDEN * (k + 1));
    }
    left = new double[full.length];
    step = new double[full.length];
    levels = new double[full.length];
    error = error();
  }

  private double error() {
    double steepest = 1;
    for (int k = 0; k < full.length; k++) {
      if (k == 0 || full[k] != full[k - 1]) {
        steepest = Math.max(steepest, full[k].steepness());
      }
    }
    return near.error() == 0 ? 0 : steepest * near.error() + SETTLED;
  }

  @Override
  public void paint(Moment tMs, double[] drives) {
    findLevels(tMs);
    for (int k = 0; k < full.length; k++) {
      full[k].write(curve.light(levels[k]), drives, k * Mixer.SLOTS);
    }
  }

  @Override
  public double paintNearly(Moment tMs, double[] drives) {
    if (error == 0 || error > MOST_ERROR) {
      paint(tMs, drives);
      return 0;
    }
    findLevels(tMs);
    for (int k = 0; k < full.length; k++) {
      full[k].write(near.light(levels[k]), drives, k * Mixer.SLOTS);
    }
    return error;
  }

  private void findLevels(Moment tMs) {
    long whole = tMs.floorOver(turn.lengthMs());
    if (whole != known) {
      for (int k = 0; k < full.length; k++) {
        left[k] = noise(k, whole);
        step[k] = noise(k, whole + 1) - left[k];
      }
      known = whole;
    }
    double rest = turn.share(tMs);
    double share = rest * rest * (3 - 2 * rest);
    for (int k = 0; k < full.length; k++) {
      double noise = left[k] + step[k] * share;
      levels[k] = level * (1 - depth * noise);
    }
  }

  // 0 to below 1, by the finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).
  private double noise(int pixel, long turn) {
    return (mix(seeds[pixel] + GOLDEN * (turn + 1)) >>> 11) * UNIT;
  }

  private static long mix(long seed) {
    long z = (seed ^ (seed >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
