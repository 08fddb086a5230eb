package lampwright.exporters.firmware;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/** What to know before a folder's firmware is put on a controller; its README says more. */
final class FirmwareCautions {
  /** The timer with which a hobby IDE's own functions tell the time. */
  private static final Integer IDE_TIMER = 0;

  private FirmwareCautions() {}

  static List<Finding> of(Rig rig, Board board, PinPlan pins) {
    List<Finding> found = new ArrayList<>();
    Subject folder = new Subject.OneExport("firmware");
    Subject chip = new Subject.Chip(board.controller().name());
    found.add(Finding.of(Code.FLASHING_LIGHT, folder).make());
    found.add(Finding.of(Code.FIRST_POWER_UP, folder).make());
    if (!rig.outputs().isEmpty()) {
      found.add(Finding.of(Code.OUTPUT_IS_SIGNAL, folder).make());
    }
    if (board.driven() && rig.controller().isEmpty()) {
      found.add(
          Finding.of(Code.CONTROLLER_ASSUMED, folder)
              .with("name", Figure.words(board.controller().name()))
              .make());
    }
    if (board.controller().id().equals("attiny85")) {
      found.add(Finding.of(Code.FACTORY_CLOCK, chip).make());
    }
    List<String> late =
        pins.outputs().stream()
            .filter(pin -> IDE_TIMER.equals(board.pwmTimers().get(pin)))
            .map(Pin::name)
            .toList();
    if (!late.isEmpty()) {
      found.add(
          Finding.of(Code.IDE_TIMER, chip)
              .with("pins", Figure.words(String.join(", ", late)))
              .make());
    }
    return found;
  }
}
