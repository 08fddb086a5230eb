package lampwright.engine.rig;

import java.util.OptionalDouble;
import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;

/**
 * The supply wires of a chain: a lead of two conductors from the supply to its first pixel, and two
 * conductors on from pixel to pixel.
 *
 * @param lead each conductor of the lead
 * @param supplyMm length of the lead, 0 to 100,000 mm
 * @param ends where the chain is fed
 * @param farSupplyMm length of the second lead, to the last pixel, where it is fed at both ends, 0
 *     to 100,000 mm; none if not stated
 * @param strip each conductor from one pixel to the next: the copper of a strip by its area, or a
 *     wire by its gauge where pixels are soldered one by one
 * @param pitchMm length from one pixel to the next, 0 to 10,000 mm
 * @param fuseAmps rating of the fuse in each lead, 0.01 to 100 A; none if there is none
 */
public record Feed(
    Conductor lead,
    double supplyMm,
    Ends ends,
    OptionalDouble farSupplyMm,
    Conductor strip,
    double pitchMm,
    OptionalDouble fuseAmps) {
  public static final double DEFAULT_SUPPLY_MM = 300;

  /** Of a strip with 60 pixels a metre. */
  public static final double DEFAULT_PITCH_MM = 17;

  public static final Ends DEFAULT_ENDS = Ends.ONE;

  /** The copper of a strip, a conductor. */
  public static final Conductor DEFAULT_STRIP =
      new Conductor.Area(TradeNumbers.number("strip copper", "cross-section"));

  public static final double MAX_SUPPLY_MM = 100_000;

  public Feed {
    Checks checks =
        Checks.of("feed")
            .range("supplyMm", supplyMm, 0, MAX_SUPPLY_MM)
            .range("pitchMm", pitchMm, 0, 10_000);
    lead.check(checks, "awg", "mm2");
    strip.check(checks, "stripAwg", "stripMm2");
    farSupplyMm.ifPresent(mm -> checks.range("farSupplyMm", mm, 0, MAX_SUPPLY_MM));
    fuseAmps.ifPresent(amps -> checks.range("fuseAmps", amps, 0.01, 100));
    checks.done();
  }

  /** A feed with this lead and defaults for all else. */
  public static Feed of(Conductor lead) {
    return new Feed(
        lead,
        DEFAULT_SUPPLY_MM,
        DEFAULT_ENDS,
        OptionalDouble.empty(),
        DEFAULT_STRIP,
        DEFAULT_PITCH_MM,
        OptionalDouble.empty());
  }

  /**
   * Length of the second lead of a chain. Where it is not stated it is taken to begin at the supply
   * as the first one does and to run along the chain, so that a length forgotten is not an
   * optimistic one.
   *
   * @param pixels of the chain, at least 1
   */
  public double farMm(int pixels) {
    return farSupplyMm.orElse(supplyMm + pitchMm * (pixels - 1));
  }

  public Feed withLead(Conductor newLead) {
    return new Feed(newLead, supplyMm, ends, farSupplyMm, strip, pitchMm, fuseAmps);
  }

  public Feed withSupplyMm(double newSupplyMm) {
    return new Feed(lead, newSupplyMm, ends, farSupplyMm, strip, pitchMm, fuseAmps);
  }

  public Feed withEnds(Ends newEnds) {
    return new Feed(lead, supplyMm, newEnds, farSupplyMm, strip, pitchMm, fuseAmps);
  }

  public Feed withFarSupplyMm(OptionalDouble newFarSupplyMm) {
    return new Feed(lead, supplyMm, ends, newFarSupplyMm, strip, pitchMm, fuseAmps);
  }

  public Feed withStrip(Conductor newStrip) {
    return new Feed(lead, supplyMm, ends, farSupplyMm, newStrip, pitchMm, fuseAmps);
  }

  public Feed withPitchMm(double newPitchMm) {
    return new Feed(lead, supplyMm, ends, farSupplyMm, strip, newPitchMm, fuseAmps);
  }

  public Feed withFuseAmps(OptionalDouble newFuseAmps) {
    return new Feed(lead, supplyMm, ends, farSupplyMm, strip, pitchMm, newFuseAmps);
  }
}
