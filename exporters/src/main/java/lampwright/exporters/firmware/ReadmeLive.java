package lampwright.exporters.firmware;

import static lampwright.exporters.firmware.ReadmeFile.number;

import java.util.Map;
import lampwright.engine.rig.Rig;
import lampwright.exporters.live.LiveProtocol;
import lampwright.exporters.target.LivePort;
import lampwright.exporters.target.Target;

/** How a rig's lamps follow the editor. */
final class ReadmeLive {
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
        rate(rig, LiveProtocol.BAUD),
        "SLOW",
        slow ? ", " + rate(rig, LiveProtocol.SLOW_BAUD) + " at 115,200" : refused);
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

  private static String rate(Rig rig, int baud) {
    return number(Math.floor(LiveRate.of(rig, baud).framesPerSecond()), 0);
  }
}
