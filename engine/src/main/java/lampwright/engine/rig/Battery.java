package lampwright.engine.rig;

import java.util.OptionalDouble;
import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

/**
 * A battery pack by its label, and what is between it and the rig.
 *
 * @param milliampHours 1 to 1,000,000
 * @param usableShare usable fraction of it, 0.01 to 1; a pack drawn flat ages, and lithium cells
 *     must not be, so that 0.8 is common (practice)
 * @param packVolts nominal voltage, 0.5 to 100 V; none if not stated: then the rig's supply voltage
 * @param regulator between the pack and the rig
 * @param efficiency of a switching regulator, 0.1 to 1; none for what is usual
 * @param fuseAmps rating of the fuse at the pack, 0.01 to 100 A; none if there is none
 */
public record Battery(
    double milliampHours,
    double usableShare,
    OptionalDouble packVolts,
    Regulator regulator,
    OptionalDouble efficiency,
    OptionalDouble fuseAmps) {
  public static final double DEFAULT_USABLE_SHARE = TradeNumbers.number("battery", "usable share");

  /** That of a lithium cell; other cells rise about as much. */
  private static final double FULL_SHARE =
      TradeNumbers.number("battery", "full lithium cell")
          / TradeNumbers.number("battery", "nominal lithium cell");

  public static final Field<Battery, Double> MILLIAMP_HOURS =
      Field.required(
          "milliampHours",
          new NumberType(Unit.MILLIAMP_HOURS, 1, 1_000_000),
          Battery::milliampHours,
          2000.0);
  public static final Field<Battery, Double> USABLE_SHARE =
      Field.usual(
          "usableShare",
          new NumberType(Unit.SHARE, 0.01, 1),
          Battery::usableShare,
          DEFAULT_USABLE_SHARE);
  public static final Field<Battery, OptionalDouble> PACK_VOLTS =
      Field.optional(
          "packVolts",
          OptionalType.ofNumber(new NumberType(Unit.VOLTS, 0.5, 100)),
          Battery::packVolts);
  public static final Field<Battery, Regulator> REGULATOR =
      Field.usual(
          "regulator",
          ChoiceType.of("regulator", Regulator.class, Regulator::key),
          Battery::regulator,
          Regulator.NONE);
  public static final Field<Battery, OptionalDouble> EFFICIENCY =
      Field.optional(
          "efficiency",
          OptionalType.ofNumber(new NumberType(Unit.SHARE, 0.1, 1)),
          Battery::efficiency);
  public static final Field<Battery, OptionalDouble> FUSE_AMPS =
      Field.optional(
          "fuseAmps",
          OptionalType.ofNumber(new NumberType(Unit.AMPS, 0.01, 100)),
          Battery::fuseAmps);

  public static final Shape<Battery> SHAPE =
      Shape.of(
          "battery",
          Battery.class,
          MILLIAMP_HOURS,
          USABLE_SHARE,
          PACK_VOLTS,
          REGULATOR,
          EFFICIENCY,
          FUSE_AMPS);

  public Battery {
    Checks checks =
        SHAPE.check(milliampHours, usableShare, packVolts, regulator, efficiency, fuseAmps);
    checks.that(
        efficiency.isEmpty() || regulator.switching(),
        "efficiency",
        Checks.plain(efficiency.orElse(0)),
        "must be used with a switching regulator: buck or boost");
    checks.done();
  }

  /** A pack of which no more than its capacity is stated. */
  public static Battery of(double milliampHours) {
    return SHAPE.draft().set(MILLIAMP_HOURS, milliampHours).make();
  }

  /** Nominal voltage of the pack, V. */
  public double volts(double supplyVolts) {
    return packVolts.orElse(supplyVolts);
  }

  /** Voltage of the pack when it is full, V. */
  public double fullVolts(double supplyVolts) {
    return volts(supplyVolts) * FULL_SHARE;
  }

  /**
   * What flows out of the pack for a current into the rig: behind a switching regulator the power
   * is what counts, else the current is the same (practice).
   *
   * @param current into the rig, in any unit
   * @param supplyVolts at the rig
   * @return in the same unit
   */
  public double packCurrent(double current, double supplyVolts) {
    return regulator.switching()
        ? supplyVolts * current / (efficiencyInUse() * volts(supplyVolts))
        : current;
  }

  /** What flows into the rig where this flows out of the pack; {@link #packCurrent} undone. */
  public double rigCurrent(double packCurrent, double supplyVolts) {
    return regulator.switching()
        ? packCurrent * efficiencyInUse() * volts(supplyVolts) / supplyVolts
        : packCurrent;
  }

  /** The efficiency that is reckoned with, 0 to 1; of a pack without a switching regulator 1. */
  public double efficiencyInUse() {
    return efficiency.orElse(regulator.usualEfficiency().orElse(1));
  }

  /**
   * How long the pack lasts.
   *
   * @param meanMilliamps into the rig, at least 0
   * @param supplyVolts at the rig
   * @return hours; none if no current flows
   */
  public OptionalDouble hours(double meanMilliamps, double supplyVolts) {
    Checks.require("mean milliamps", meanMilliamps, 0, 10_000_000);
    return meanMilliamps == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(milliampHours * usableShare / packCurrent(meanMilliamps, supplyVolts));
  }

  /** With another regulator; an efficiency that it can't have is left out. */
  public Battery withRegulator(Regulator newRegulator) {
    return new Battery(
        milliampHours,
        usableShare,
        packVolts,
        newRegulator,
        newRegulator.switching() ? efficiency : OptionalDouble.empty(),
        fuseAmps);
  }
}
