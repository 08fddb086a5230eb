package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;
import lampwright.engine.light.Mix;
import lampwright.engine.light.Mixer;
import lampwright.engine.time.Ratio;

/**
 * The unrest of a fire or a failing lamp: the level falls by smooth noise, each pixel's its own.
 *
 * @param look colour and level
 * @param seed of the noise; the same seed gives the same bytes
 * @param depth how far the level falls, 0 to 1
 * @param rateHz how often the noise turns, above 0, to 1,000 Hz
 */
public record Flicker(Look look, long seed, double depth, BigDecimal rateHz) implements Pattern {
  public static final long DEFAULT_SEED = 1;
  public static final double DEFAULT_DEPTH = 0.5;
  public static final BigDecimal DEFAULT_RATE_HZ = BigDecimal.valueOf(8);

  /** The greatest seed: integers up to here survive every JSON reader. */
  public static final long MAX_SEED = (1L << 53) - 1;

  private static final double UNIT = 0x1p-53;

  public static final Shape<Flicker> SHAPE =
      Shape.of(
          "flicker",
          Flicker.class,
          Look.group(Flicker::look),
          Field.usual(
              "seed", WholeType.ofLong(Unit.NONE, 0, MAX_SEED), Flicker::seed, DEFAULT_SEED),
          Field.usual("depth", NumberType.SHARE, Flicker::depth, DEFAULT_DEPTH),
          Field.usual(
              "rateHz", DecimalType.above0(Unit.HERTZ, 1000), Flicker::rateHz, DEFAULT_RATE_HZ));

  public Flicker {
    rateHz = canonical(rateHz);
    SHAPE.check(look, seed, depth, rateHz).done();
  }

  @Override
  public Shape<Flicker> shape() {
    return SHAPE;
  }

  @Override
  public Painter painter(PaintContext context) {
    Mix[] full = context.mixes(look.colour());
    Period turn = new Period(Ratio.of(1000).over(Ratio.of(rateHz)), BigDecimal.ZERO);
    return (tMs, drives) -> {
      long whole = tMs.floorOver(turn.lengthMs());
      double rest = turn.share(tMs);
      double share = rest * rest * (3 - 2 * rest);
      for (int k = 0; k < context.count(); k++) {
        double left = noise(k, whole);
        double noise = left + (noise(k, whole + 1) - left) * share;
        double light = context.curve().light(look.level() * (1 - depth * noise));
        full[k].write(light, drives, k * Mixer.SLOTS);
      }
    };
  }

  // 0 to below 1, by the finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).
  private double noise(int pixel, long turn) {
    long z = mix(mix(seed + 0x9E3779B97F4A7C15L * (pixel + 1)) + 0x9E3779B97F4A7C15L * (turn + 1));
    return (z >>> 11) * UNIT;
  }

  private static long mix(long seed) {
    long z = (seed ^ (seed >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
