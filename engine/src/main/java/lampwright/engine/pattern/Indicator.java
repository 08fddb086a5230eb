package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.Optional;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/**
 * A direction indicator: on for a share of each period.
 *
 * @param look colour and level
 * @param phase the share of the period at which it starts
 * @param perMinute flashes per minute, above 0, to 60,000
 * @param onShare lit share of the period, 0 to 1
 */
public record Indicator(Look look, BigDecimal phase, BigDecimal perMinute, BigDecimal onShare)
    implements Pattern {

  /** UN Regulation 6 and 48: 90 per minute, plus or minus 30. */
  public static final BigDecimal DEFAULT_PER_MINUTE = BigDecimal.valueOf(90);

  public static final BigDecimal DEFAULT_ON_SHARE = new BigDecimal("0.5");

  public static final Shape<Indicator> SHAPE =
      Shape.of(
          "indicator",
          Indicator.class,
          Look.group(Indicator::look),
          Period.phase(Indicator::phase),
          Field.usual("perMinute", Times.PER_MINUTE, Indicator::perMinute, DEFAULT_PER_MINUTE),
          Field.usual(
              "onShare", new DecimalType(Unit.SHARE, 0, 1), Indicator::onShare, DEFAULT_ON_SHARE));

  public Indicator {
    phase = canonical(phase);
    perMinute = canonical(perMinute);
    onShare = canonical(onShare);
    SHAPE.check(look, phase, perMinute, onShare).done();
  }

  @Override
  public Shape<Indicator> shape() {
    return SHAPE;
  }

  @Override
  public Optional<Ratio> period() {
    return Optional.of(Period.ofRate(perMinute));
  }

  @Override
  public Painter painter(PaintContext context) {
    Period period = Period.of(this, context);
    Ratio on = period.lengthMs().times(Ratio.of(onShare)).reduced();
    return new OnOff(context, look) {
      @Override
      boolean lit(Moment tMs) {
        return period.place(tMs).compareTo(on) < 0;
      }

      @Override
      public long sameFor(Moment tMs, Ratio frameMs) {
        return period.framesBefore(lit(tMs) ? on : period.lengthMs(), frameMs);
      }
    };
  }
}
