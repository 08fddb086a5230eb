package lampwright.app.command;

import java.util.List;
import java.util.OptionalInt;
import lampwright.app.review.Reviews;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;

/**
 * A scene measured, with the size of its packed data.
 *
 * @param packedBytes none if it cannot be packed
 * @param findings on the scene, gravest first
 */
record Measured(SceneReport report, OptionalInt packedBytes, List<Finding> findings) {
  static Measured of(Project project, FrameTable table, Progress progress)
      throws CancelledException {
    SceneReport report = SceneReport.of(table);
    return new Measured(report, packed(table, progress), Reviews.ALL.ofScene(project, report));
  }

  private static OptionalInt packed(FrameTable table, Progress progress) throws CancelledException {
    List<FrameTable> alone = List.of(table);
    if (!ScenePacker.faults(alone).isEmpty()) {
      return OptionalInt.empty();
    }
    try {
      return OptionalInt.of(
          ScenePacker.pack("packed", alone, Target.slowestDecodeCost(), progress).size());
    } catch (ExportRefusedException tooLong) {
      return OptionalInt.empty();
    }
  }
}
