package lampwright.engine.meter;

import java.util.List;
import lampwright.engine.rig.Rig;

/**
 * How long frames take on a rig's data lines.
 *
 * @param chains the wire time of every chain, in rig order
 * @param frameUs time of one frame of all chains, us
 * @param driven whether these are the times of a driver that is known; otherwise those of the pixel
 *     types, all chains sent in turn
 */
public record LineTimes(List<WireTime> chains, double frameUs, boolean driven) {
  private static final double US_PER_SECOND = 1e6;

  public LineTimes {
    chains = List.copyOf(chains);
  }

  /** The times of a rig of whose controller nothing is known. */
  public static LineTimes nominal(Rig rig) {
    List<WireTime> chains = rig.chains().stream().map(WireTime::of).toList();
    return new LineTimes(chains, WireTime.inTurnUs(chains), false);
  }

  /** The share of a frame's time that the lines are busy; above 1 it does not fit. */
  public double share(double framesPerSecond) {
    return frameUs * framesPerSecond / US_PER_SECOND;
  }

  /** The highest frame rate at which all chains can be sent, frames/s; infinite without chains. */
  public double highestFramesPerSecond() {
    return US_PER_SECOND / frameUs;
  }
}
