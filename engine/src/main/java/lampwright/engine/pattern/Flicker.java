package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;

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
    return new FlickerPainter(this, context);
  }
}
