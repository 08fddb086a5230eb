package lampwright.engine.rig;

import java.util.OptionalDouble;
import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;

/**
 * A battery pack by its label, and what stands between it and the rig.
 *
 * @param milliampHours 1 to 1,000,000
 * @param usableShare how much of that may be drawn, above 0 to 1; a pack drawn flat ages, and
 *     lithium cells must not be, so that 0.8 is common (practice)
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
  public static final Regulator DEFAULT_REGULATOR = Regulator.NONE;

  /** That of a lithium cell; other cells rise about as much. */
  private static final double FULL_SHARE =
      TradeNumbers.number("battery", "full lithium cell")
          / TradeNumbers.number("battery", "nominal lithium cell");

  public Battery {
    Checks checks =
        Checks.of("battery")
            .range("milliampHours", milliampHours, 1, 1_000_000)
            .range("usableShare", usableShare, 0.01, 1);
    packVolts.ifPresent(volts -> checks.range("packVolts", volts, 0.5, 100));
    efficiency.ifPresent(
        share ->
            checks
                .range("efficiency", share, 0.1, 1)
                .that(
                    regulator.switching(),
                    "efficiency",
                    Checks.plain(share),
                    "needs a regulator that switches, buck or boost"));
    fuseAmps.ifPresent(amps -> checks.range("fuseAmps", amps, 0.01, 100));
    checks.done();
  }

  /** A pack of which no more than its capacity is stated. */
  public static Battery of(double milliampHours) {
    return new Battery(
        milliampHours,
        DEFAULT_USABLE_SHARE,
        OptionalDouble.empty(),
        DEFAULT_REGULATOR,
        OptionalDouble.empty(),
        OptionalDouble.empty());
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

  public Battery withMilliampHours(double newMilliampHours) {
    return new Battery(newMilliampHours, usableShare, packVolts, regulator, efficiency, fuseAmps);
  }

  public Battery withUsableShare(double newUsableShare) {
    return new Battery(milliampHours, newUsableShare, packVolts, regulator, efficiency, fuseAmps);
  }

  public Battery withPackVolts(OptionalDouble newPackVolts) {
    return new Battery(milliampHours, usableShare, newPackVolts, regulator, efficiency, fuseAmps);
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

  public Battery withEfficiency(OptionalDouble newEfficiency) {
    return new Battery(milliampHours, usableShare, packVolts, regulator, newEfficiency, fuseAmps);
  }

  public Battery withFuseAmps(OptionalDouble newFuseAmps) {
    return new Battery(milliampHours, usableShare, packVolts, regulator, efficiency, newFuseAmps);
  }
}
