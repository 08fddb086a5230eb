package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import lampwright.engine.check.Checks;

/**
 * The rhythm of a light of navigation, written as on charts.
 *
 * @param look colour and level
 * @param phase the share of the period at which it starts
 * @param character such as {@code Fl(2) 10s}; see {@link Rhythm}
 * @param unitMs length of a Morse dot, above 0, to 10,000 ms
 */
public record LightCharacter(Look look, BigDecimal phase, String character, BigDecimal unitMs)
    implements Pattern {
  public static final String KIND = "light-character";
  public static final String DEFAULT_CHARACTER = "Fl(2) 10s";
  public static final BigDecimal DEFAULT_UNIT_MS = BigDecimal.valueOf(500);

  public LightCharacter {
    phase = canonical(phase);
    unitMs = canonical(unitMs);
    Checks checks = Period.check(Checks.of(KIND), phase).above0("unitMs", unitMs, 10_000);
    // A rhythm can only be judged with a unit that holds.
    if (unitMs.signum() > 0 && unitMs.compareTo(BigDecimal.valueOf(10_000)) <= 0) {
      try {
        Rhythm.of(character, unitMs);
      } catch (IllegalArgumentException wrong) {
        checks.add("character", character, String.valueOf(wrong.getMessage()));
      }
    }
    checks.done();
  }

  @Override
  public String kind() {
    return KIND;
  }

  @Override
  public Painter painter(Stage stage) {
    Rhythm rhythm = Rhythm.of(character, unitMs);
    Period period = new Period(rhythm.periodMs(), phase);
    return OnOff.painter(stage, look, tMs -> rhythm.lit(period.place(tMs)));
  }
}
