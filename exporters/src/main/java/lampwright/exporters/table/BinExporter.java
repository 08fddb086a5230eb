package lampwright.exporters.table;

import java.io.IOException;
import java.util.List;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportTarget;
import lampwright.exporters.Progress;

/** The bare frame table: frames x bytes per frame, no header. */
final class BinExporter extends TableExporter {
  @Override
  public String key() {
    return "bin";
  }

  @Override
  public String summary() {
    return "raw frame table, no header (.bin)";
  }

  @Override
  public ExportFacts facts(ExportJob job) {
    return new ExportFacts(key(), job.table().bytes(), List.of(job.fileName("bin")));
  }

  @Override
  void write(ExportJob job, ExportTarget target, Progress progress)
      throws IOException, CancelledException {
    writeFile(
        target,
        job.fileName("bin"),
        out -> writeFrames(job.table(), progress, frame -> out.bytes(frame, 0, frame.length)));
  }
}
