package lampwright.exporters.target;

import com.google.common.collect.ImmutableList;
import java.util.List;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Rig;

/** The ATtiny85. */
final class Attiny85 extends AvrTarget {
  static final String ID = "attiny85";

  Attiny85(Controller controller) {
    super(controller, TargetTable.of(ID));
  }

  @Override
  String macro() {
    return "__AVR_ATtiny85__";
  }

  @Override
  public List<Finding> cautions(Rig rig) {
    return ImmutableList.<Finding>builder()
        .add(Finding.of(Code.FACTORY_CLOCK, new Subject.Chip(name())).make())
        .addAll(super.cautions(rig))
        .build();
  }

  @Override
  public String boardNotes() {
    return "An ATtiny85 leaves the factory at 1 MHz: set its fuses to 8 MHz (CKDIV8 off), or to 16 MHz from"
        + "\nthe PLL. Its own oscillator may be off by 10 % until it is calibrated (datasheet): calibrate it,"
        + "\nor use a crystal, if the pixels flicker.";
  }
}
