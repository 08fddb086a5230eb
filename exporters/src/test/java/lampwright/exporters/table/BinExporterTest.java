package lampwright.exporters.table;

import lampwright.exporters.ExportJob;
import lampwright.exporters.Exporter;
import lampwright.exporters.ExporterContract;
import lampwright.exporters.MemoryTarget;

class BinExporterTest extends ExporterContract {
  @Override
  protected Exporter exporter() {
    return new BinExporter();
  }

  @Override
  protected byte[] decode(ExportJob job, MemoryTarget files) {
    return files.bytes(job.scene().id() + ".bin");
  }
}
