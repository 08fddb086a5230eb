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
  private static final int AVR_BYTES = 900;

  private static final int RP2040_BYTES = 900;

  /** Clocks of an AVR at which the slower rate is too far off: lampwright_serial.h. */
  private static final int TOO_SLOW_HERTZ = 8_000_000;

  private ReadmeLive() {}

  static Map<String, String> words(Rig rig, Target target, LivePort port, boolean reacts) {
    int frameBytes = new FrameLayout(rig).bytes();
    boolean slow = target.hertz().orElseThrow() != TOO_SLOW_HERTZ;
    return Map.of(
        "TAKEN",
        port.isFree() ? "" : taken(port),
        "BYTES",
        number(target.rp2040() ? RP2040_BYTES : AVR_BYTES, 0),
        "WIRING",
        wiring(rig, target, port),
        "SHOW",
        reacts ? "situations" : "scene",
        "FAST",
        number(Math.floor(rate(rig, target, frameBytes, LiveProtocol.BAUD)), 0),
        "SLOW",
        slow
            ? ", "
                + number(Math.floor(rate(rig, target, frameBytes, LiveProtocol.SLOW_BAUD)), 0)
                + " at 115,200"
            : " (115,200 would be off by 3.5 % at this clock and does not build)");
  }

  private static String taken(LivePort port) {
    return "**It does not build for this project:** a chain, output or input is on "
        + port.receive().name()
        + " or "
        + port.transmit().name()
        + ". Put it on another pin and export again.\n\n";
  }

  private static String wiring(Rig rig, Target target, LivePort port) {
    String volts = number(target.rp2040() ? 3.3 : rig.pinVolts(), 1);
    return "a USB serial adapter with signals of "
        + volts
        + " V: its TX through 1 kohm to "
        + target.named(port.receive()).name()
        + ", its RX to "
        + target.named(port.transmit()).name()
        + ", ground to ground."
        + (target.rp2040()
            ? " These pins are not made for 5 V."
            : " Boards of the usual form with a USB serial chip of their own on these pins need no"
                + " adapter; opening the port restarts them, and their boot loader takes a second.")
        + " Supply the pixels from their own supply, not from USB.";
  }

  /** Frames/s at which a computer that answers at once is kept up with. */
  static double rate(Rig rig, Target target, int frameBytes, int baud) {
    double byteUs = LiveProtocol.BITS_PER_BYTE * US_PER_SECOND / baud;
    double packetUs = (LiveProtocol.HEAD_BYTES + frameBytes + LiveProtocol.CRC_BYTES) * byteUs;
    LineTimes times = target.lineTimes(rig);
    if (target.sendsAtOnce()) {
      // A frame is on its way while the next one is received.
      return US_PER_SECOND
          / Math.max(times.frameUs(), packetUs + LiveProtocol.TAKEN_BYTES * byteUs);
    }
    double resetUs = times.chains().stream().mapToDouble(WireTime::resetUs).max().orElse(0);
    // The lines rest while a packet comes.
    double sendUs = packetUs > resetUs ? times.frameUs() - resetUs : times.frameUs();
    return US_PER_SECOND / (packetUs + sendUs + BYTES_AFTER_FRAME * byteUs);
  }
}
