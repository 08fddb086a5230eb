package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.field.Field;
import lampwright.engine.field.FlagType;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Mixer;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/**
 * The hue runs round the circle.
 *
 * @param look its level; the colour is the cycle's own
 * @param phase the share of the period at which it starts
 * @param periodMs time of one round, above 0, to a day
 * @param spread turns of hue from the first pixel to past the last, -1,000 to 1,000
 * @param saturation 0 to 1
 * @param backwards whether the hue falls with time
 */
public record ColourCycle(
    Look look,
    BigDecimal phase,
    BigDecimal periodMs,
    double spread,
    double saturation,
    boolean backwards)
    implements Pattern {
  public static final BigDecimal DEFAULT_PERIOD_MS = BigDecimal.valueOf(4000);
  public static final double DEFAULT_SPREAD = 0;
  public static final double DEFAULT_SATURATION = 1;
  public static final boolean DEFAULT_BACKWARDS = false;

  public static final Shape<ColourCycle> SHAPE =
      Shape.of(
          "colour-cycle",
          ColourCycle.class,
          Look.group(ColourCycle::look),
          Period.phase(ColourCycle::phase),
          Field.usual("periodMs", Times.MS_ABOVE_0, ColourCycle::periodMs, DEFAULT_PERIOD_MS),
          Field.usual(
              "spread",
              new NumberType(Unit.NONE, -1000, 1000),
              ColourCycle::spread,
              DEFAULT_SPREAD),
          Field.usual("saturation", NumberType.SHARE, ColourCycle::saturation, DEFAULT_SATURATION),
          Field.usual("backwards", new FlagType(), ColourCycle::backwards, DEFAULT_BACKWARDS));

  public ColourCycle {
    phase = canonical(phase);
    periodMs = canonical(periodMs);
    SHAPE.check(look, phase, periodMs, spread, saturation, backwards).done();
  }

  @Override
  public Shape<ColourCycle> shape() {
    return SHAPE;
  }

  /** None: it goes through all hues. */
  @Override
  public Map<String, Colour> colours() {
    return Map.of();
  }

  @Override
  public Optional<Ratio> period() {
    return Optional.of(Ratio.of(periodMs));
  }

  @Override
  public Painter painter(PaintContext context) {
    return new Hues(this, context);
  }

  private static final class Hues implements Painter {
    private final ColourCycle cycle;
    private final Mixer[] mixers;
    private final double light;
    private final Period period;

    Hues(ColourCycle cycle, PaintContext context) {
      this.cycle = cycle;
      this.mixers = context.mixers().toArray(Mixer[]::new);
      this.light = context.curve().light(cycle.look.level());
      this.period = Period.of(cycle, context);
    }

    @Override
    public void paint(Moment tMs, double[] drives) {
      double first = first(tMs);
      for (int k = 0; k < mixers.length; k++) {
        if (!isLikeTheOneBefore(k, drives)) {
          mixers[k].mixHue(turns(first, k), cycle.saturation, light, drives, k * Mixer.SLOTS);
        }
      }
    }

    @Override
    public double paintNearly(Moment tMs, double[] drives) {
      double first = first(tMs);
      double error = 0;
      for (int k = 0; k < mixers.length; k++) {
        if (!isLikeTheOneBefore(k, drives)) {
          double off =
              mixers[k].mixHueNearly(
                  turns(first, k), cycle.saturation, light, drives, k * Mixer.SLOTS);
          error = Math.max(error, off);
        }
      }
      return error;
    }

    private double first(Moment tMs) {
      double share = period.share(tMs);
      return cycle.backwards ? -share : share;
    }

    private double turns(double first, int k) {
      double turns = first + cycle.spread * k / mixers.length;
      return turns - Math.floor(turns);
    }

    // Without spread the pixels are alike, and mixing is the dear part.
    private boolean isLikeTheOneBefore(int k, double[] drives) {
      if (k == 0 || cycle.spread != 0 || mixers[k] != mixers[k - 1]) {
        return false;
      }
      int at = k * Mixer.SLOTS;
      System.arraycopy(drives, at - Mixer.SLOTS, drives, at, Mixer.SLOTS);
      return true;
    }
  }
}
