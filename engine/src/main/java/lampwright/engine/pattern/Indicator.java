package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import lampwright.engine.check.Checks;
import lampwright.engine.time.Ratio;

/**
 * A direction indicator: on for a share of each period.
 *
 * @param look colour and level
 * @param phase the share of the period at which it starts
 * @param perMinute flashes a minute, above 0, to 60,000
 * @param onShare lit share of the period, 0 to 1
 */
public record Indicator(Look look, BigDecimal phase, BigDecimal perMinute, BigDecimal onShare)
    implements Pattern {
  public static final String KIND = "indicator";

  /** UN Regulation 6 and 48: 90 a minute, give or take 30. */
  public static final BigDecimal DEFAULT_PER_MINUTE = BigDecimal.valueOf(90);

  public static final BigDecimal DEFAULT_ON_SHARE = new BigDecimal("0.5");

  public Indicator {
    phase = canonical(phase);
    perMinute = canonical(perMinute);
    onShare = canonical(onShare);
    Period.check(Checks.of(KIND), phase)
        .above0("perMinute", perMinute, Times.MAX_PER_MINUTE)
        .range("onShare", onShare, 0, 1)
        .done();
  }

  @Override
  public String kind() {
    return KIND;
  }

  @Override
  public Painter painter(Stage stage) {
    Period period = new Period(Period.ofRate(perMinute), phase);
    Ratio on = period.lengthMs().times(Ratio.of(onShare)).reduced();
    return OnOff.painter(stage, look, tMs -> period.place(tMs).compareTo(on) < 0);
  }
}
