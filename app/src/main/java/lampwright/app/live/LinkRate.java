package lampwright.app.live;

import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Rig;
import lampwright.exporters.live.LiveProtocol;
import lampwright.exporters.target.Target;

/**
 * How many frames a link can carry: packet, data lines and answer follow one another. What an
 * adapter takes to hand on bytes comes on top.
 *
 * @param pixels of all chains
 * @param frameBytes bytes of a frame
 * @param packetUs a packet on the serial line
 * @param wireUs a frame on the data lines, as the controller sends it
 * @param answerUs an answer on the serial line
 */
public record LinkRate(
    int pixels, int frameBytes, Baud baud, double packetUs, double wireUs, double answerUs) {
  private static final double US_PER_SECOND = 1e6;
  private static final double NANOS_PER_US = 1e3;

  /** That of a rig. */
  public static LinkRate of(Rig rig, Baud baud) {
    int bytes = new FrameLayout(rig).bytes();
    return new LinkRate(
        rig.chains().stream().mapToInt(Chain::pixels).sum(),
        bytes,
        baud,
        baud.nanos(LinkPacket.bytes(bytes)) / NANOS_PER_US,
        rig.chains().isEmpty() ? 0 : Target.lineTimesOf(rig).frameUs(),
        baud.nanos(LiveProtocol.TAKEN_BYTES) / NANOS_PER_US);
  }

  /** The most frames per second. */
  public double framesPerSecond() {
    return US_PER_SECOND / (packetUs + wireUs + answerUs);
  }
}
