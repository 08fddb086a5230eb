package lampwright.exporters.table;

import java.util.List;
import java.util.OptionalInt;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.review.Unit;
import lampwright.exporters.ExportJob;
import lampwright.exporters.target.Target;

/** Whether an unpacked frame table fits the controller that the project names. */
final class RawTable {
  private RawTable() {}

  /** The finding that it is too large; none if it fits, or no controller is named. */
  static List<Finding> tooLarge(ExportJob job, String format) {
    if (job.project().rig().controller().isEmpty()) {
      return List.of();
    }
    Target target = Target.of(job.project().rig());
    OptionalInt free = target.memory().freeFlashBytes();
    long bytes = job.table().bytes();
    if (free.isEmpty() || bytes <= free.getAsInt()) {
      return List.of();
    }
    return List.of(
        Finding.of(Code.RAW_TABLE_SIZE, new Subject.OneExport(format))
            .with("size", Figure.count(bytes, Unit.BYTES))
            .with("name", Figure.words(target.name()))
            .with("limit", Figure.count(free.getAsInt(), Unit.BYTES))
            .with(
                "frames", Figure.count(free.getAsInt() / job.table().layout().bytes(), Unit.FRAMES))
            .in(job.scene())
            .source(target.memory().flashSource())
            .make());
  }
}
