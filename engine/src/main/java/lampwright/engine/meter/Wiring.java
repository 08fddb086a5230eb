package lampwright.engine.meter;

import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;

/**
 * The supply wires of one chain as resistances and limits.
 *
 * @param feed as stated
 * @param pixels of the chain, at least 1
 */
public record Wiring(Feed feed, int pixels) {
  private static final double CONDUCTORS = 2;
  private static final double METRES = 1e-3;

  /** The wires as resistances. */
  Ladder ladder(double supplyVolts) {
    Wire lead = Wire.of(feed.lead());
    double near = ohms(lead, feed.supplyMm());
    double between = ohms(Wire.of(feed.strip()), feed.pitchMm());
    return feed.ends() == Ends.BOTH
        ? Ladder.fedAtBothEnds(supplyVolts, near, between, ohms(lead, feed.farMm(pixels)))
        : Ladder.fedAtOneEnd(supplyVolts, near, between);
  }

  /** What each lead may carry, A. */
  public static double leadLimitAmps(Feed feed) {
    return Wire.of(feed.lead()).wireLimitAmps();
  }

  /** What the conductors between pixels may carry, A. */
  public static double stripLimitAmps(Feed feed) {
    Wire strip = Wire.of(feed.strip());
    return feed.strip() instanceof Conductor.Gauge ? strip.wireLimitAmps() : strip.stripLimitAmps();
  }

  /** What the weaker of lead and strip may carry, A: the most that a fuse may be rated for. */
  public static double limitAmps(Feed feed) {
    return Math.min(leadLimitAmps(feed), stripLimitAmps(feed));
  }

  private static double ohms(Wire wire, double millimetres) {
    return CONDUCTORS * wire.ohmsPerMetre() * millimetres * METRES;
  }
}
