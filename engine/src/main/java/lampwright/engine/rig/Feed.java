package lampwright.engine.rig;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import lampwright.engine.light.Checks;

/**
 * The supply wires of each chain: two conductors from the supply to the chain and on from pixel to
 * pixel.
 *
 * @param awg gauge of each conductor (ASTM B258), 0 to 40; or none
 * @param mm2 cross-section of each conductor, 0.001 to 120 mm2; or none, but one of the two
 * @param supplyMm length from the supply to the chain, 0 to 100,000 mm
 * @param pitchMm length from one pixel to the next, 0 to 10,000 mm
 * @param ends where the chain is fed
 */
public record Feed(
    OptionalInt awg, OptionalDouble mm2, double supplyMm, double pitchMm, Ends ends) {
  public static final double DEFAULT_SUPPLY_MM = 300;

  /** Of a strip with 60 pixels a metre. */
  public static final double DEFAULT_PITCH_MM = 17;

  public static final Ends DEFAULT_ENDS = Ends.ONE;

  public Feed {
    Checks checks =
        Checks.of("feed")
            .range("supplyMm", supplyMm, 0, 100_000)
            .range("pitchMm", pitchMm, 0, 10_000);
    if (awg.isPresent()) {
      checks.range("awg", awg.getAsInt(), 0, 40);
    }
    if (mm2.isPresent()) {
      checks.range("mm2", mm2.getAsDouble(), 0.001, 120);
    }
    if (awg.isPresent() == mm2.isPresent()) {
      checks.add("awg", awg.isPresent() ? "awg and mm2" : "missing", "needs one of awg and mm2");
    }
    checks.done();
  }
}
