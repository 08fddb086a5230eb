package lampwright.exporters.table;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.ExportTarget;
import lampwright.exporters.Exporter;
import lampwright.exporters.Progress;

/** What the formats of this package share: refusal, buffered files and the run of the frames. */
abstract class TableExporter implements Exporter {
  /** Writes one file. */
  @FunctionalInterface
  interface FileBody {
    void write(BlockOutput out) throws IOException, CancelledException;
  }

  /** Takes the frames one after another; the array is used again for the next. */
  @FunctionalInterface
  interface FrameWriter {
    void write(byte[] frame) throws IOException;
  }

  @Override
  public final List<Finding> export(ExportJob job, ExportTarget target, Progress progress)
      throws IOException, CancelledException {
    ExportRefusedException.throwIfAny(key(), Optional.of(job.scene().id()), facts(job).refusals());
    write(job, target, progress);
    return List.of();
  }

  abstract void write(ExportJob job, ExportTarget target, Progress progress)
      throws IOException, CancelledException;

  static void writeFile(ExportTarget target, String fileName, FileBody body)
      throws IOException, CancelledException {
    try (OutputStream stream = target.open(fileName)) {
      BlockOutput out = new BlockOutput(stream);
      body.write(out);
      out.flush();
    }
  }

  static void writeFrames(FrameTable table, Progress progress, FrameWriter writer)
      throws IOException, CancelledException {
    int total = table.frameCount();
    progress.frames(0, total);
    FrameCursor cursor = table.cursor();
    byte[] frame = new byte[table.layout().bytes()];
    while (cursor.hasNext()) {
      cursor.next(frame);
      writer.write(frame);
      progress.frames(cursor.position(), total);
    }
  }
}
