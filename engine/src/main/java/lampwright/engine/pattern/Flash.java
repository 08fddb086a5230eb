package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.Optional;
import lampwright.engine.field.Field;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/**
 * Groups of flashes: each flash an on part and an off part, and a gap after the group.
 *
 * @param look colour and level
 * @param phase the share of the period at which it starts
 * @param onMs 0 to a day
 * @param offMs 0 to a day
 * @param flashes flashes in a group, 1 to 1,000
 * @param gapMs 0 to a day
 */
public record Flash(
    Look look, BigDecimal phase, BigDecimal onMs, BigDecimal offMs, int flashes, BigDecimal gapMs)
    implements Pattern {
  public static final BigDecimal DEFAULT_ON_MS = BigDecimal.valueOf(100);
  public static final BigDecimal DEFAULT_OFF_MS = BigDecimal.valueOf(100);
  public static final int DEFAULT_FLASHES = 1;
  public static final BigDecimal DEFAULT_GAP_MS = BigDecimal.ZERO;

  public static final Shape<Flash> SHAPE =
      Shape.of(
          "flash",
          Flash.class,
          Look.group(Flash::look),
          Period.phase(Flash::phase),
          Field.usual("onMs", Times.MS, Flash::onMs, DEFAULT_ON_MS),
          Field.usual("offMs", Times.MS, Flash::offMs, DEFAULT_OFF_MS),
          Field.usual(
              "flashes", WholeType.ofInt(Unit.NONE, 1, 1000), Flash::flashes, DEFAULT_FLASHES),
          Field.usual("gapMs", Times.MS, Flash::gapMs, DEFAULT_GAP_MS));

  public Flash {
    phase = canonical(phase);
    onMs = canonical(onMs);
    offMs = canonical(offMs);
    gapMs = canonical(gapMs);
    SHAPE
        .check(look, phase, onMs, offMs, flashes, gapMs)
        .that(
            onMs.signum() > 0 || offMs.signum() > 0 || gapMs.signum() > 0,
            "onMs",
            "a period of 0 ms",
            "onMs, offMs or gapMs must be greater than 0")
        .done();
  }

  @Override
  public Shape<Flash> shape() {
    return SHAPE;
  }

  @Override
  public Optional<Ratio> period() {
    return Optional.of(Ratio.of(onMs).plus(Ratio.of(offMs)).times(flashes).plus(Ratio.of(gapMs)));
  }

  @Override
  public Painter painter(PaintContext context) {
    Ratio on = Ratio.of(onMs);
    Ratio one = on.plus(Ratio.of(offMs));
    Ratio group = one.times(flashes);
    Period period = Period.of(this, context);
    return new OnOff(context, look) {
      @Override
      boolean lit(Moment tMs) {
        Moment place = period.place(tMs);
        if (place.compareTo(group) >= 0) {
          return false;
        }
        place.modulo(one);
        return place.compareTo(on) < 0;
      }

      @Override
      public long sameFor(Moment tMs, Ratio frameMs) {
        Moment place = period.place(tMs);
        if (place.compareTo(group) >= 0) {
          return period.framesBefore(period.lengthMs(), frameMs);
        }
        place.modulo(one);
        return period.framesBefore(place.compareTo(on) < 0 ? on : one, frameMs);
      }
    };
  }
}
