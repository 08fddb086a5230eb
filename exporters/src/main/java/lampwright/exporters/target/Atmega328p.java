package lampwright.exporters.target;

import lampwright.engine.rig.Controller;

/** The ATmega328P. */
final class Atmega328p extends AvrTarget {
  static final String ID = "atmega328p";

  Atmega328p(Controller controller) {
    super(controller, TargetTable.of(ID));
  }

  @Override
  String macro() {
    return "__AVR_ATmega328P__";
  }

  @Override
  public String liveNotes() {
    return "Boards of the usual form have a USB serial chip of their own on these pins and need no"
        + " adapter; opening the port restarts them, and their boot loader takes a second or two.";
  }

  @Override
  public String boardNotes() {
    return "On boards of the usual form, PD0 to PD7 are the board's pins 0 to 7, PB0 to PB5 its pins 8 to"
        + "\n13, and PC0 to PC5 its analogue pins 0 to 5.";
  }
}
