package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import lampwright.exporters.ExportJob;
import lampwright.exporters.Exporter;
import lampwright.exporters.ExporterContract;
import lampwright.exporters.MemoryTarget;
import lampwright.exporters.TestJobs;
import org.junit.jupiter.api.Test;

class CsvExporterTest extends ExporterContract {
  @Override
  protected Exporter exporter() {
    return new CsvExporter();
  }

  @Override
  protected byte[] decode(ExportJob job, MemoryTarget files) {
    return CsvReader.bytes(files.text(job.scene().id() + ".csv"));
  }

  @Test
  void columnsAreNamedAfterLampsOrElseChainsAndOutputs() {
    String text = MemoryTarget.of(exporter(), TestJobs.mixed()).text("night-watch.csv");
    assertThat(CsvReader.names(text))
        .containsExactly(
            "beacon.1.g",
            "beacon.1.r",
            "beacon.1.b",
            "beacon.1.w",
            "beacon.2.g",
            "beacon.2.r",
            "beacon.2.b",
            "beacon.2.w",
            "beacon.0.g",
            "beacon.0.r",
            "beacon.0.b",
            "beacon.0.w",
            "chain:roof.3.g",
            "chain:roof.3.r",
            "chain:roof.3.b",
            "chain:roof.3.w",
            "rail.0.g",
            "rail.0.r",
            "rail.0.b",
            "rail.1.g",
            "rail.1.r",
            "rail.1.b",
            "tail.output",
            "output:spare");
  }

  @Test
  void noTwoColumnsHaveTheSameName() {
    for (ExportJob job : TestJobs.hostile()) {
      String text = MemoryTarget.of(exporter(), job).text(job.scene().id() + ".csv");
      assertThat(new HashSet<>(CsvReader.names(text))).hasSize(job.table().layout().bytes());
    }
  }
}
