package lampwright.engine.review;

import java.util.function.Consumer;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.project.Project;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Controller;

/** Findings on the memory of the rig's controller. */
final class MemoryFindings implements Reviewer {
  @Override
  public void scene(Project project, SceneReport report, Consumer<Finding> found) {
    project.rig().controller().ifPresent(chip -> judge(report.table(), chip, found));
  }

  private static void judge(FrameTable table, Controller controller, Consumer<Finding> found) {
    Subject subject = new Subject.Chip(controller.name());
    int frameBytes = table.layout().bytes();
    if (controller.flashBytes().isPresent() && table.bytes() > controller.flashBytes().getAsInt()) {
      int flash = controller.flashBytes().getAsInt();
      found.accept(
          Finding.of(Code.RAW_TABLE_SIZE, subject)
              .with("size", Figure.count(table.bytes(), Unit.BYTES))
              .with("limit", Figure.count(flash, Unit.BYTES))
              .with("frames", Figure.count(flash / frameBytes, Unit.FRAMES))
              .in(table.scene())
              .source(controller.source())
              .make());
    }
    if (frameBytes > controller.ramBytes()) {
      found.accept(
          Finding.of(Code.FRAME_SIZE, subject)
              .with("size", Figure.count(frameBytes, Unit.BYTES))
              .with("limit", Figure.count(controller.ramBytes(), Unit.BYTES))
              .source(controller.source())
              .make());
    }
  }
}
