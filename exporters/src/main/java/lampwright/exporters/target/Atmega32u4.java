package lampwright.exporters.target;

import lampwright.engine.rig.Controller;

/** The ATmega32U4. */
final class Atmega32u4 extends AvrTarget {
  static final String ID = "atmega32u4";

  Atmega32u4(Controller controller) {
    super(controller, TargetTable.of(ID));
  }

  @Override
  String macro() {
    return "__AVR_ATmega32U4__";
  }

  @Override
  public String boardNotes() {
    return "On boards of the usual form, the board's pins have other numbers than the datasheet's: go by"
        + "\nthe board's own drawing.";
  }
}
