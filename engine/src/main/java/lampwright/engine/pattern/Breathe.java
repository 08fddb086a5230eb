package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.Optional;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.light.Mix;
import lampwright.engine.light.Mixer;
import lampwright.engine.time.Ratio;

/**
 * Light that swells and fades like a breath: the level runs from the lowest to the pattern's own
 * and back along a cosine.
 *
 * @param look colour and highest level
 * @param phase the share of the period at which it starts
 * @param periodMs time of one breath, above 0, to a day
 * @param lowLevel the level at its start and end, 0 to 1
 */
public record Breathe(Look look, BigDecimal phase, BigDecimal periodMs, double lowLevel)
    implements Pattern {
  public static final Shape<Breathe> SHAPE =
      Shape.of(
          "breathe",
          Breathe.class,
          Look.group(Breathe::look),
          Period.phase(Breathe::phase),
          Field.usual("periodMs", Times.MS_ABOVE_0, Breathe::periodMs, BigDecimal.valueOf(4000)),
          Field.usual("lowLevel", NumberType.SHARE, Breathe::lowLevel, 0.0));

  public Breathe {
    phase = canonical(phase);
    periodMs = canonical(periodMs);
    SHAPE.check(look, phase, periodMs, lowLevel).done();
  }

  @Override
  public Shape<Breathe> shape() {
    return SHAPE;
  }

  @Override
  public Optional<Ratio> period() {
    return Optional.of(Ratio.of(periodMs));
  }

  @Override
  public Painter painter(PaintContext context) {
    Mix[] full = context.mixes(look.colour());
    Period breath = Period.of(this, context);
    return (tMs, drives) -> {
      double risen = (1 - Degrees.cos(Degrees.apart(360 * breath.share(tMs), 0))) / 2;
      double light = context.curve().light(lowLevel + (look.level() - lowLevel) * risen);
      for (int k = 0; k < full.length; k++) {
        full[k].write(light, drives, k * Mixer.SLOTS);
      }
    };
  }
}
