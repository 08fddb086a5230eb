package lampwright.engine.meter;

import com.google.common.primitives.ImmutableDoubleArray;
import java.util.List;
import java.util.OptionalDouble;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;

/**
 * What the supply wires of one chain do over all frames of a scene: each figure is that of its own
 * worst frame.
 *
 * @param chain the chain's id
 * @param feed its wires as stated
 * @param leastVolts the least voltage of each pixel, V
 * @param lowestPixel the pixel that has the least of all, from 0
 * @param lowestFrame the frame in which it has it
 * @param lead the greatest current in a lead
 * @param strip the greatest current from one pixel to the next
 * @param neededVolts what its pixels need to do as stated, V
 * @param remedies other wirings that keep to all limits, if these wires do not; those fed as now
 *     first
 */
public record ChainFeed(
    String chain,
    Feed feed,
    ImmutableDoubleArray leastVolts,
    int lowestPixel,
    int lowestFrame,
    Carried lead,
    Carried strip,
    double neededVolts,
    List<Remedy> remedies) {
  /**
   * The greatest current in a conductor.
   *
   * @param amps 0 or more
   * @param frame in which it flows
   * @param limitAmps above which the conductor deserves a caution for its heat
   */
  public record Carried(double amps, int frame, double limitAmps) {
    /** Whether it carries more than its limit. */
    public boolean isOver() {
      return amps > limitAmps;
    }
  }

  /**
   * Other wires for the same chain.
   *
   * @param ends where it is fed
   * @param awg gauge of the lead, the thinnest that does
   * @param mm2 its cross-section
   * @param lowestVolts the least voltage of any pixel then
   * @param leadAmps the greatest current in a lead then
   * @param fuseAmps the fuse in each lead that carries it and protects lead and strip; none if
   *     there is no usual one
   */
  public record Remedy(
      Ends ends,
      int awg,
      double mm2,
      double lowestVolts,
      double leadAmps,
      OptionalDouble fuseAmps) {}

  public ChainFeed {
    remedies = List.copyOf(remedies);
  }

  /** The least voltage of any pixel, V. */
  public double lowestVolts() {
    return leastVolts.get(lowestPixel);
  }

  /** Whether some pixel gets less than it needs. */
  public boolean isShort() {
    return lowestVolts() < neededVolts;
  }

  /**
   * The fuse in each lead that carries its current and protects lead and strip, A; none if none.
   */
  public OptionalDouble fuse() {
    return Fuses.fitting(lead.amps, Wiring.limitAmps(feed));
  }

  /** Whether other wires are called for. */
  boolean needsRemedy() {
    return isShort() || lead.isOver() || strip.isOver();
  }

  ChainFeed withRemedies(List<Remedy> found) {
    return new ChainFeed(
        chain, feed, leastVolts, lowestPixel, lowestFrame, lead, strip, neededVolts, found);
  }
}
