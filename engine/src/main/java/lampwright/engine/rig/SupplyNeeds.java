package lampwright.engine.rig;

import java.util.Optional;
import java.util.function.Function;
import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.field.Draft;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

/**
 * What a pixel needs to work.
 *
 * @param failVolts supply below which it fails, 0.5 V to {@code minVolts}
 * @param minVolts least supply at which it works as stated, 0.5 to 60 V; between the two it lights,
 *     but dims, and its white changes colour
 * @param maxVolts greatest supply that it survives, from {@code minVolts} to 66 V
 * @param inputHigh least level of its data input that counts as high
 * @param inputMax greatest level that its data input survives
 */
public record SupplyNeeds(
    double failVolts, double minVolts, double maxVolts, InputLevel inputHigh, InputLevel inputMax) {
  private static final double MIN_VOLTS = 0.5;

  /** How far a supply may be off its nominal voltage where a type says no more. */
  private static final double USUAL_TOLERANCE =
      TradeNumbers.number("pixel type", "supply off its nominal voltage");

  private static final InputLevel USUAL_HIGH =
      new InputLevel(TradeNumbers.number("pixel type", "input high level"), 0);
  private static final InputLevel USUAL_MAX =
      new InputLevel(1, TradeNumbers.number("pixel type", "input above supply"));

  private static final NumberType SUPPLY = new NumberType(Unit.VOLTS, MIN_VOLTS, 60);
  private static final NumberType LEVEL = new NumberType(Unit.VOLTS, 0, 60);

  private static final Field<SupplyNeeds, Double> FAIL_VOLTS =
      stated("failVolts", SUPPLY, SupplyNeeds::failVolts);
  private static final Field<SupplyNeeds, Double> LEAST_VOLTS =
      stated("minVolts", SUPPLY, SupplyNeeds::minVolts);
  private static final Field<SupplyNeeds, Double> GREATEST_VOLTS =
      stated("maxVolts", new NumberType(Unit.VOLTS, MIN_VOLTS, 66), SupplyNeeds::maxVolts);
  private static final Field<SupplyNeeds, Double> HIGH_SHARE =
      share("inputHighShare", SupplyNeeds::inputHigh);
  private static final Field<SupplyNeeds, Double> HIGH_VOLTS =
      volts("inputHighVolts", SupplyNeeds::inputHigh);
  private static final Field<SupplyNeeds, Double> MAX_SHARE =
      share("inputMaxShare", SupplyNeeds::inputMax);
  private static final Field<SupplyNeeds, Double> MAX_LEVEL_VOLTS =
      volts("inputMaxVolts", SupplyNeeds::inputMax);

  /** Its fields; what is not given of them is as {@link #around} has it. */
  static final Shape<SupplyNeeds> SHAPE =
      Shape.custom(
          "needs",
          SupplyNeeds.class,
          given -> given(around(PixelType.DEFAULT_VOLTS), given),
          FAIL_VOLTS,
          LEAST_VOLTS,
          GREATEST_VOLTS,
          HIGH_SHARE,
          HIGH_VOLTS,
          MAX_SHARE,
          MAX_LEVEL_VOLTS);

  public SupplyNeeds {
    Checks checks = Checks.of("supply needs");
    // Often the same number, and then one fault.
    if (failVolts != minVolts) {
      SUPPLY.check("failVolts", failVolts, checks);
    }
    SUPPLY.check("minVolts", minVolts, checks);
    GREATEST_VOLTS.type().check("maxVolts", maxVolts, checks);
    HIGH_SHARE.type().check("inputHighShare", inputHigh.supplyShare(), checks);
    LEVEL.check("inputHighVolts", inputHigh.volts(), checks);
    MAX_SHARE.type().check("inputMaxShare", inputMax.supplyShare(), checks);
    LEVEL.check("inputMaxVolts", inputMax.volts(), checks);
    if (checks.faults().isEmpty()) {
      String least = Checks.plain(minVolts);
      checks
          .that(
              failVolts <= minVolts,
              "failVolts",
              Checks.plain(failVolts),
              "must be at most minVolts, which is " + least)
          .that(
              maxVolts >= minVolts,
              "maxVolts",
              Checks.plain(maxVolts),
              "must be at least minVolts, which is " + least);
    }
    checks.done();
  }

  /** The needs of a type of which only the nominal supply is known. */
  public static SupplyNeeds around(double volts) {
    double least = volts * (1 - USUAL_TOLERANCE);
    return new SupplyNeeds(least, least, volts * (1 + USUAL_TOLERANCE), USUAL_HIGH, USUAL_MAX);
  }

  /** These needs, but for what is given of the fields. */
  static SupplyNeeds given(SupplyNeeds usual, Draft<SupplyNeeds> given) {
    double least = given.given(LEAST_VOLTS).orElse(usual.minVolts);
    return new SupplyNeeds(
        given.given(FAIL_VOLTS).orElse(least),
        least,
        given.given(GREATEST_VOLTS).orElse(usual.maxVolts),
        level(given.given(HIGH_SHARE), given.given(HIGH_VOLTS), usual.inputHigh),
        level(given.given(MAX_SHARE), given.given(MAX_LEVEL_VOLTS), usual.inputMax));
  }

  // Of a level that is given in part, the other part is nothing.
  private static InputLevel level(
      Optional<Double> share, Optional<Double> volts, InputLevel usual) {
    return share.isEmpty() && volts.isEmpty()
        ? usual
        : new InputLevel(share.orElse(0.0), volts.orElse(0.0));
  }

  private static Field<SupplyNeeds, Double> stated(
      String name, NumberType type, Function<SupplyNeeds, Double> get) {
    return Field.derived(name, type, get, given -> get.apply(around(PixelType.DEFAULT_VOLTS)))
        .alwaysWritten();
  }

  private static Field<SupplyNeeds, Double> share(
      String name, Function<SupplyNeeds, InputLevel> level) {
    return stated(name, NumberType.SHARE, needs -> level.apply(needs).supplyShare())
        .writtenIf(needs -> level.apply(needs).supplyShare() != 0);
  }

  // One of the two is written, or both: of none it would be the usual level.
  private static Field<SupplyNeeds, Double> volts(
      String name, Function<SupplyNeeds, InputLevel> level) {
    return stated(name, LEVEL, needs -> level.apply(needs).volts())
        .writtenIf(
            needs -> level.apply(needs).volts() != 0 || level.apply(needs).supplyShare() == 0);
  }

  /** The least high level of the data line at a supply voltage, V. */
  public double inputHighVolts(double supplyVolts) {
    return inputHigh.at(supplyVolts);
  }

  /** The greatest level that the data line may have at a supply voltage, V. */
  public double inputMaxVolts(double supplyVolts) {
    return inputMax.at(supplyVolts);
  }
}
