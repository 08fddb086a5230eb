package lampwright.exporters.target;

import com.google.common.collect.ImmutableList;
import java.util.List;
import lampwright.engine.rig.Controller;

/** A controller that Lampwright knows nothing of. */
final class OtherController extends HookTarget {
  static final String ID = "other";

  OtherController(Controller controller) {
    super(controller, TargetTable.of(ID));
  }

  // It may be an AVR.
  @Override
  public List<String> fixedSources() {
    return ImmutableList.<String>builder()
        .addAll(super.fixedSources())
        .add("src/lampwright_player_avr.S")
        .build();
  }
}
