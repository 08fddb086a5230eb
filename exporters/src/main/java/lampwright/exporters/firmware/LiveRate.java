package lampwright.exporters.firmware;

import lampwright.engine.meter.LineTimes;
import lampwright.engine.meter.WireTime;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Rig;
import lampwright.exporters.live.LiveProtocol;
import lampwright.exporters.target.Target;

/** How many frames the bench link carries where the computer sends the next at once. */
public final class LiveRate {
  private static final double US_PER_SECOND = 1e6;

  /** Bytes of the answer that leave after the frame is sent; the others leave meanwhile. */
  private static final int BYTES_AFTER_FRAME = 3;

  private LiveRate() {}

  /**
   * The most frames/s of a rig whose controller drives its pins.
   *
   * @param baud bits/s of the serial line
   */
  public static double framesPerSecond(Rig rig, int baud) {
    Target target = Target.of(rig);
    int frameBytes = new FrameLayout(rig).bytes();
    double byteUs = LiveProtocol.BITS_PER_BYTE * US_PER_SECOND / baud;
    double packetUs = (LiveProtocol.HEAD_BYTES + frameBytes + LiveProtocol.CRC_BYTES) * byteUs;
    LineTimes times = target.lineTimes(rig);
    if (target.sendsAtOnce()) {
      // A frame is on its way while the next one is received.
      double answeredUs = packetUs + LiveProtocol.TAKEN_BYTES * byteUs;
      return US_PER_SECOND / Math.max(times.frameUs(), answeredUs);
    }
    double resetUs = times.chains().stream().mapToDouble(WireTime::resetUs).max().orElse(0);
    // The lines rest while a packet comes.
    double sendUs = packetUs > resetUs ? times.frameUs() - resetUs : times.frameUs();
    return US_PER_SECOND / (packetUs + sendUs + BYTES_AFTER_FRAME * byteUs);
  }
}
