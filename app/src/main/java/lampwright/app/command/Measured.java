package lampwright.app.command;

import java.util.List;
import java.util.OptionalInt;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.ScenePacker;

/**
 * A scene measured, with the size of its packed data.
 *
 * @param packedBytes none if it cannot be packed
 */
record Measured(SceneReport report, OptionalInt packedBytes) {
  static Measured of(FrameTable table, Progress progress) throws CancelledException {
    return new Measured(SceneReport.of(table), packed(table, progress));
  }

  private static OptionalInt packed(FrameTable table, Progress progress) throws CancelledException {
    List<FrameTable> alone = List.of(table);
    if (!ScenePacker.faults(alone).isEmpty()) {
      return OptionalInt.empty();
    }
    try {
      return OptionalInt.of(ScenePacker.pack("packed", alone, progress).length);
    } catch (ExportRefusedException tooLong) {
      return OptionalInt.empty();
    }
  }
}
