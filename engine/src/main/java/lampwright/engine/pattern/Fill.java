package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;
import lampwright.engine.field.Field;
import lampwright.engine.field.Shape;
import lampwright.engine.light.Mixer;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/**
 * Pixels come on one after another, stay, and go off together: the sequential indicator.
 *
 * @param look colour and level
 * @param phase the share of the period at which it starts
 * @param overMs the time in which they come on, 0 to a day; UN Regulation 6 allows 200 ms
 * @param holdMs the time for which all are on, 0 to a day
 * @param offMs the time for which all are off, 0 to a day
 */
public record Fill(
    Look look, BigDecimal phase, BigDecimal overMs, BigDecimal holdMs, BigDecimal offMs)
    implements Pattern {
  public static final BigDecimal DEFAULT_OVER_MS = BigDecimal.valueOf(200);
  public static final BigDecimal DEFAULT_HOLD_MS = BigDecimal.valueOf(200);
  public static final BigDecimal DEFAULT_OFF_MS = BigDecimal.valueOf(400);

  public static final Shape<Fill> SHAPE =
      Shape.of(
          "fill",
          Fill.class,
          Look.group(Fill::look),
          Period.phase(Fill::phase),
          Field.usual("overMs", Times.MS, Fill::overMs, DEFAULT_OVER_MS),
          Field.usual("holdMs", Times.MS, Fill::holdMs, DEFAULT_HOLD_MS),
          Field.usual("offMs", Times.MS, Fill::offMs, DEFAULT_OFF_MS));

  public Fill {
    phase = canonical(phase);
    overMs = canonical(overMs);
    holdMs = canonical(holdMs);
    offMs = canonical(offMs);
    SHAPE
        .check(look, phase, overMs, holdMs, offMs)
        .that(
            overMs.signum() > 0 || holdMs.signum() > 0 || offMs.signum() > 0,
            "overMs",
            "a period of 0 ms",
            "overMs, holdMs or offMs must be greater than 0")
        .done();
  }

  @Override
  public Shape<Fill> shape() {
    return SHAPE;
  }

  @Override
  public Optional<Ratio> period() {
    return Optional.of(Ratio.of(overMs.add(holdMs).add(offMs)));
  }

  @Override
  public Painter painter(PaintContext context) {
    int n = context.count();
    double[] full = context.drives(look);
    Ratio over = Ratio.of(overMs);
    Ratio lit = over.plus(Ratio.of(holdMs));
    Ratio each = over.over(Ratio.of(n));
    Period period = Period.of(this, context);
    return (tMs, drives) -> {
      Moment place = period.place(tMs);
      int on = place.compareTo(lit) < 0 ? litPixels(place, over, each, n) * Mixer.SLOTS : 0;
      System.arraycopy(full, 0, drives, 0, on);
      Arrays.fill(drives, on, full.length, 0);
    };
  }

  // Pixel k is lit from over x k/n: those with k <= place / (over / n).
  private static int litPixels(Moment place, Ratio over, Ratio each, int n) {
    if (place.compareTo(over) >= 0) {
      return n;
    }
    return (int) Math.min(n, place.floorOver(each) + 1);
  }
}
