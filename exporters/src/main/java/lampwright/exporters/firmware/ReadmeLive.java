package lampwright.exporters.firmware;

import static lampwright.exporters.firmware.ReadmeFile.number;

import java.util.Map;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.meter.WireTime;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Rig;
import lampwright.exporters.live.LiveProtocol;
import lampwright.exporters.target.LivePort;
import lampwright.exporters.target.Target;

/** How a rig's lamps follow the editor. */
final class ReadmeLive {
  private static final double US_PER_SECOND = 1e6;

  /** Bytes of the answer that leave after the frame is sent; the others leave meanwhile. */
  private static final int BYTES_AFTER_FRAME = 3;

  /** Program memory of the bench link on an AVR and on an RP2040: measured, rounded up. */
  private static final String AVR_BYTES = "1,000";

  private static final String RP2040_BYTES = "900";

  /** What lampwright_serial.h lets pass. */
  private static final double MOST_BAUD_ERROR = 0.025;

  private ReadmeLive() {}

  static Map<String, String> words(Rig rig, Target target, LivePort port, boolean reacts) {
    double error = Math.abs(target.baudError(LiveProtocol.SLOW_BAUD));
    boolean slow = error <= MOST_BAUD_ERROR;
    String refused = " (115,200 would be off by " + number(100 * error, 1) + " % at this clock)";
    return Map.of(
        "TAKEN",
        port.isFree() ? "" : taken(port),
        "SLOWER",
        slow ? ", or `make LIVE=1 BAUD=115200` for a slower line" : "",
        "BYTES",
        target.rp2040() ? RP2040_BYTES : AVR_BYTES,
        "WIRING",
        wiring(rig, target, port),
        "SHOW",
        reacts ? "situations" : "scene",
        "FAST",
        rate(rig, target, LiveProtocol.BAUD),
        "SLOW",
        slow ? ", " + rate(rig, target, LiveProtocol.SLOW_BAUD) + " at 115,200" : refused);
  }

  private static String taken(LivePort port) {
    return "**It does not build for this project:** a chain, output or input is on "
        + port.receive().name()
        + " or "
        + port.transmit().name()
        + ". Put it on another pin and export again.\n\n";
  }

  private static String wiring(Rig rig, Target target, LivePort port) {
    String volts = number(rig.pinVolts(), 1);
    return "a USB serial adapter with signals of "
        + volts
        + " V: its TX through 1 kohm to "
        + target.named(port.receive()).name()
        + ", its RX to "
        + target.named(port.transmit()).name()
        + ", ground to ground. "
        + (target.liveNotes().isEmpty() ? "" : target.liveNotes() + " ")
        + "Supply the pixels from their own supply, not from USB.";
  }

  /** Frames/s at which a computer that answers at once is kept up with. */
  private static String rate(Rig rig, Target target, int baud) {
    return number(Math.floor(US_PER_SECOND / frameUs(rig, target, baud)), 0);
  }

  private static double frameUs(Rig rig, Target target, int baud) {
    int frameBytes = new FrameLayout(rig).bytes();
    double byteUs = LiveProtocol.BITS_PER_BYTE * US_PER_SECOND / baud;
    double packetUs = (LiveProtocol.HEAD_BYTES + frameBytes + LiveProtocol.CRC_BYTES) * byteUs;
    LineTimes times = target.lineTimes(rig);
    if (target.sendsAtOnce()) {
      // A frame is on its way while the next one is received.
      return Math.max(times.frameUs(), packetUs + LiveProtocol.TAKEN_BYTES * byteUs);
    }
    double resetUs = times.chains().stream().mapToDouble(WireTime::resetUs).max().orElse(0);
    // The lines rest while a packet comes.
    double sendUs = packetUs > resetUs ? times.frameUs() - resetUs : times.frameUs();
    return packetUs + sendUs + BYTES_AFTER_FRAME * byteUs;
  }
}
