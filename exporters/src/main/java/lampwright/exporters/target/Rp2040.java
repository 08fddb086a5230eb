package lampwright.exporters.target;

import lampwright.engine.rig.Controller;

/** The RP2040. It has no driver of ours yet. */
final class Rp2040 extends HookTarget {
  static final String ID = "rp2040";

  Rp2040(Controller controller) {
    super(controller, TargetTable.of(ID));
  }
}
