package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import lampwright.engine.check.Checks;
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
  public static final String KIND = "flash";
  public static final BigDecimal DEFAULT_ON_MS = BigDecimal.valueOf(100);
  public static final BigDecimal DEFAULT_OFF_MS = BigDecimal.valueOf(100);
  public static final int DEFAULT_FLASHES = 1;
  public static final BigDecimal DEFAULT_GAP_MS = BigDecimal.ZERO;

  public Flash {
    phase = canonical(phase);
    onMs = canonical(onMs);
    offMs = canonical(offMs);
    gapMs = canonical(gapMs);
    Period.check(Checks.of(KIND), phase)
        .range("onMs", onMs, 0, Times.MAX_MS)
        .range("offMs", offMs, 0, Times.MAX_MS)
        .range("flashes", flashes, 1, 1000)
        .range("gapMs", gapMs, 0, Times.MAX_MS)
        .that(
            onMs.signum() > 0 || offMs.signum() > 0 || gapMs.signum() > 0,
            "onMs",
            "a period of 0 ms",
            "needs onMs, offMs or gapMs above 0")
        .done();
  }

  @Override
  public String kind() {
    return KIND;
  }

  @Override
  public Painter painter(Stage stage) {
    Ratio on = Ratio.of(onMs);
    Ratio one = on.plus(Ratio.of(offMs));
    Ratio group = one.times(flashes);
    Period period = new Period(group.plus(Ratio.of(gapMs)), phase);
    return OnOff.painter(
        stage,
        look,
        tMs -> {
          Ratio place = period.place(tMs);
          return place.compareTo(group) < 0 && place.modulo(one).compareTo(on) < 0;
        });
  }
}
