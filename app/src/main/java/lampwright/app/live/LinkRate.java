package lampwright.app.live;

import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;
import lampwright.exporters.firmware.LiveRate;

/**
 * How many frames a link can carry. What an adapter takes to hand on bytes comes on top.
 *
 * @param pixels of all chains
 * @param frameBytes bytes of a frame
 * @param times of a frame on its way
 */
public record LinkRate(int pixels, int frameBytes, Baud baud, LiveRate times) {
  /** That of a rig. */
  public static LinkRate of(Rig rig, Baud baud) {
    return new LinkRate(
        rig.chains().stream().mapToInt(Chain::pixels).sum(),
        new FrameLayout(rig).bytes(),
        baud,
        LiveRate.of(rig, baud.rate()));
  }

  /** The most frames per second. */
  public double framesPerSecond() {
    return times.framesPerSecond();
  }
}
