package lampwright.app.command;

import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import lampwright.app.review.Reviews;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Progress;
import lampwright.exporters.firmware.FirmwareMemory;
import lampwright.exporters.packed.encode.Packer;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;

/**
 * A scene measured, with the size of its packed data.
 *
 * @param packedBytes none if it cannot be packed, or is so large that only a bound is known
 * @param packedAtMost the bound, if only that is known
 * @param findings on the scene, gravest first
 */
record Measured(
    SceneReport report,
    OptionalInt packedBytes,
    OptionalLong packedAtMost,
    List<Finding> findings) {
  static Measured of(Project project, FrameTable table, Progress progress)
      throws CancelledException {
    SceneReport report = SceneReport.of(table);
    boolean large = table.bytes() > FirmwareMemory.LARGE && canBePacked(table);
    return new Measured(
        report,
        large ? OptionalInt.empty() : packed(table, progress),
        large
            ? OptionalLong.of(Packer.mostBytes(table.bytes(), table.frameCount()))
            : OptionalLong.empty(),
        Reviews.ALL.ofScene(project, report));
  }

  private static boolean canBePacked(FrameTable table) {
    return ScenePacker.faults(List.of(table)).isEmpty();
  }

  private static OptionalInt packed(FrameTable table, Progress progress) throws CancelledException {
    if (!canBePacked(table)) {
      return OptionalInt.empty();
    }
    try {
      return OptionalInt.of(
          ScenePacker.pack("packed", List.of(table), Target.slowestDecodeCost(), progress).size());
    } catch (ExportRefusedException tooLong) {
      return OptionalInt.empty();
    }
  }
}
