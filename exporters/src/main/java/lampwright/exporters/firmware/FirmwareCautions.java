package lampwright.exporters.firmware;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.Caution;

/** What to know before a folder's firmware is put on a controller; its README says more. */
final class FirmwareCautions {
  /** The timer with which a hobby IDE's own functions tell the time. */
  private static final Integer IDE_TIMER = 0;

  private FirmwareCautions() {}

  static List<Caution> of(Rig rig, Board board, PinPlan pins) {
    List<Caution> cautions = new ArrayList<>();
    add(
        cautions,
        "flashing light can trigger seizures in people with photosensitive epilepsy",
        "warn people before you show a model that flashes faster than three times a second");
    add(
        cautions,
        "wiring that is wrong can burn pixels, controller or battery",
        "the first time, take a supply with a current limit or a fuse, motor unplugged; common"
            + " ground first; README.md, Wiring and Cautions");
    if (!rig.outputs().isEmpty()) {
      add(
          cautions,
          "a driver output is a signal and feeds no lamp or motor",
          "put a transistor or LED driver on it, or one small LED with its resistor (20 mA)");
    }
    if (board.driven() && rig.controller().isEmpty()) {
      String name = board.controller().name();
      add(
          cautions,
          "the project names no controller",
          "made for the " + name + " at its usual pins");
    }
    if (board.controller().id().equals("attiny85")) {
      add(
          cautions,
          "an ATtiny85 leaves the factory at 1 MHz, too slow for pixels",
          "set its fuses to 8 MHz and calibrate it, or use a crystal; README.md, Pins");
    }
    List<String> late =
        pins.outputs().stream()
            .filter(pin -> IDE_TIMER.equals(board.pwmTimers().get(pin)))
            .map(Pin::name)
            .toList();
    if (!late.isEmpty()) {
      add(
          cautions,
          "PWM on " + String.join(", ", late) + " takes timer 0, which a hobby IDE's clock uses",
          "build without an IDE, or use other pins");
    }
    return cautions;
  }

  private static void add(List<Caution> cautions, String what, String remedy) {
    cautions.add(new Caution(what, remedy));
  }
}
