package lampwright.engine.meter;

import java.util.OptionalDouble;
import lampwright.engine.light.Checks;

/**
 * How a chain is wired to its supply.
 *
 * @param wire each of the two conductors
 * @param feedMetres length of the cable from the supply to the first pixel, and to the last as well
 *     if fed at both ends; 0 to 1,000 m
 * @param betweenMetres length of the cable from one pixel to the next, 0 to 1,000 m
 * @param bothEnds whether the last pixel is fed as well as the first
 */
public record WireRun(Wire wire, double feedMetres, double betweenMetres, boolean bothEnds) {
  private static final double CONDUCTORS = 2;

  public WireRun {
    Checks.require("feed metres", feedMetres, 0, 1000);
    Checks.require("metres between pixels", betweenMetres, 0, 1000);
  }

  /** The run as resistances. */
  public Ladder ladder(double supplyVolts) {
    double perMetre = CONDUCTORS * wire.ohmsPerMetre();
    double feed = perMetre * feedMetres;
    double between = perMetre * betweenMetres;
    return bothEnds
        ? Ladder.fedAtBothEnds(supplyVolts, feed, between, feed)
        : Ladder.fedAtOneEnd(supplyVolts, feed, between);
  }

  /**
   * The least cross-section in mm2 at which every pixel gets the voltage that it needs. The drops
   * go by the inverse of the cross-section, so that this is exact.
   *
   * @param amps what each pixel draws, from the first
   * @return none if the supply itself has no more than the pixels need, while some current drops
   */
  public OptionalDouble neededSquareMillimetres(
      double supplyVolts, double[] amps, double neededVolts) {
    LadderVolts volts = ladder(supplyVolts).solve(amps);
    double drop = supplyVolts - volts.at(volts.weakest());
    double allowed = supplyVolts - neededVolts;
    if (drop <= 0) {
      return allowed >= 0 ? OptionalDouble.of(0) : OptionalDouble.empty();
    }
    return allowed > 0
        ? OptionalDouble.of(wire.squareMillimetres() * drop / allowed)
        : OptionalDouble.empty();
  }
}
