package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.Optional;
import lampwright.engine.check.Checks;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
import lampwright.engine.field.Shape;
import lampwright.engine.field.TextType;
import lampwright.engine.field.Unit;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;

/**
 * The rhythm of a light of an aid to navigation, written as on charts.
 *
 * @param look colour and level
 * @param phase the share of the period at which it starts
 * @param character such as {@code Fl(2) 10s}; see {@link Rhythm}
 * @param unitMs length of a Morse dot, above 0, to 10,000 ms
 */
public record LightCharacter(Look look, BigDecimal phase, String character, BigDecimal unitMs)
    implements Pattern {
  public static final String DEFAULT_CHARACTER = "Fl(2) 10s";
  public static final BigDecimal DEFAULT_UNIT_MS = BigDecimal.valueOf(500);

  public static final Shape<LightCharacter> SHAPE =
      Shape.of(
          "light-character",
          LightCharacter.class,
          Look.group(LightCharacter::look),
          Period.phase(
              LightCharacter
                  ::phase), // Written even where it is the usual one: it says what the light is.
          Field.usual("character", new TextType(60), LightCharacter::character, DEFAULT_CHARACTER)
              .alwaysWritten(),
          Field.usual(
              "unitMs",
              DecimalType.above0(Unit.MILLISECONDS, 10_000),
              LightCharacter::unitMs,
              DEFAULT_UNIT_MS));

  public LightCharacter {
    phase = canonical(phase);
    unitMs = canonical(unitMs);
    Checks checks = SHAPE.check(look, phase, character, unitMs);
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
  public Shape<LightCharacter> shape() {
    return SHAPE;
  }

  @Override
  public Optional<Ratio> period() {
    return Optional.of(Rhythm.of(character, unitMs).periodMs());
  }

  @Override
  public Painter painter(PaintContext context) {
    Rhythm rhythm = Rhythm.of(character, unitMs);
    Period period = Period.of(this, context);
    return new OnOff(context, look) {
      @Override
      boolean lit(Moment tMs) {
        return rhythm.lit(period.place(tMs));
      }

      @Override
      public long sameFor(Moment tMs, Ratio frameMs) {
        return period.framesBefore(rhythm.end(period.place(tMs)), frameMs);
      }
    };
  }
}
