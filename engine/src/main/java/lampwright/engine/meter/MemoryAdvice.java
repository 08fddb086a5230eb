package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Controller;

/** Advice on the memory of the rig's controller. */
final class MemoryAdvice {
  private MemoryAdvice() {}

  static List<Advice> of(FrameTable table) {
    List<Advice> advice = new ArrayList<>();
    table.layout().rig().controller().ifPresent(controller -> judge(table, controller, advice));
    return advice;
  }

  private static void judge(FrameTable table, Controller controller, List<Advice> advice) {
    Subject subject = new Subject.Chip(controller.name());
    if (controller.flashBytes().isPresent() && table.bytes() > controller.flashBytes().getAsInt()) {
      int flash = controller.flashBytes().getAsInt();
      advice.add(
          new Advice(
              Weight.FAILS,
              subject,
              "the raw frame table takes " + table.bytes() + " bytes",
              "it has " + flash + " bytes of program memory",
              controller.source(),
              "play fewer frames/s, a shorter loop, or pack the data; at this size "
                  + flash / table.layout().bytes()
                  + " frames would fill it"));
    }
    if (table.layout().bytes() > controller.ramBytes()) {
      advice.add(
          new Advice(
              Weight.FAILS,
              subject,
              "one frame takes " + table.layout().bytes() + " bytes",
              "it has " + controller.ramBytes() + " bytes of working memory",
              controller.source(),
              "divide the chains between controllers"));
    }
  }
}
