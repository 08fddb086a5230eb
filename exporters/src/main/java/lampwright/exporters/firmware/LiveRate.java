package lampwright.exporters.firmware;

import lampwright.engine.meter.LineTimes;
import lampwright.engine.meter.WireTime;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Rig;
import lampwright.exporters.live.LiveProtocol;
import lampwright.exporters.target.Target;

/**
 * How many frames the bench link carries where the computer sends the next at once.
 *
 * @param packetUs a packet on the serial line
 * @param linesUs a frame on the data lines, less the rest between two that a packet outlasts
 * @param answerUs what of the answer leaves after the frame is sent
 * @param together whether a frame is on its way while the next packet is received
 */
public record LiveRate(double packetUs, double linesUs, double answerUs, boolean together) {
  private static final double US_PER_SECOND = 1e6;

  /** Bytes of the answer that leave after the frame is sent; the others leave meanwhile. */
  private static final int BYTES_AFTER_FRAME = 3;

  /**
   * That of a rig.
   *
   * @param baud bits/s of the serial line
   */
  public static LiveRate of(Rig rig, int baud) {
    int frameBytes = new FrameLayout(rig).bytes();
    double byteUs = LiveProtocol.BITS_PER_BYTE * US_PER_SECOND / baud;
    double packetUs = LiveProtocol.packetBytes(frameBytes) * byteUs;
    LineTimes times = Target.lineTimesOf(rig);
    if (Target.of(rig).sendsAtOnce()) {
      double answerUs = LiveProtocol.TAKEN_BYTES * byteUs;
      return new LiveRate(packetUs, times.frameUs(), answerUs, true);
    }
    double resetUs = times.chains().stream().mapToDouble(WireTime::resetUs).max().orElse(0);
    // The lines rest while a packet comes.
    double linesUs = packetUs > resetUs ? times.frameUs() - resetUs : times.frameUs();
    return new LiveRate(packetUs, linesUs, BYTES_AFTER_FRAME * byteUs, false);
  }

  /** The most frames/s. */
  public double framesPerSecond() {
    double linkUs = packetUs + answerUs;
    return US_PER_SECOND / (together ? Math.max(linesUs, linkUs) : linkUs + linesUs);
  }
}
