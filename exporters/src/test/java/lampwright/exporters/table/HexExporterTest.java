package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.Exporter;
import lampwright.exporters.ExporterContract;
import lampwright.exporters.MemoryTarget;
import lampwright.exporters.Progress;
import lampwright.exporters.TestJobs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HexExporterTest extends ExporterContract {
  @Override
  protected Exporter exporter() {
    return new HexExporter();
  }

  @Override
  protected byte[] decode(ExportJob job, MemoryTarget files) {
    return new IntelHexReader(files.text(job.scene().id() + ".hex"))
        .bytesFrom(job.options().hexAddress());
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 1, 15, 0x7FF0, 0xFFF1, 0xFFFF, 0x1_0000, 0x0800_0000, 0xFFFF_0001L})
  void tableBeginsAtTheAddress(long address) {
    ExportJob job = TestJobs.at(TestJobs.mixed(), address);
    assertThat(decode(job, MemoryTarget.of(exporter(), job))).isEqualTo(TestJobs.table(job));
  }

  @Test
  void recordsHave16BytesButAtTheEndOrBefore64KiB() {
    ExportJob job = TestJobs.at(TestJobs.large(), 0xFFF9);
    MemoryTarget files = MemoryTarget.of(exporter(), job);
    var records = new IntelHexReader(files.text("gala.hex")).records();
    assertThat(records.get(0).bytes()).hasSize(7);
    assertThat(records.get(1).address()).isEqualTo(0x1_0000);
    assertThat(records.subList(1, records.size() - 1))
        .allSatisfy(record -> assertThat(record.bytes()).hasSize(16));
    int last = (int) ((job.table().bytes() - 7) % 16);
    assertThat(records.get(records.size() - 1).bytes()).hasSize(last == 0 ? 16 : last);
  }

  @Test
  void upperAddressIsWrittenAtEach64KiB() {
    ExportJob job = TestJobs.at(TestJobs.large(), 0);
    String[] lines = MemoryTarget.of(exporter(), job).text("gala.hex").split("\n");
    // 102,800 bytes from 0: one boundary. Sums: 02+00+00+04+00+01 = 07, and 100-07 = F9.
    assertThat(Arrays.stream(lines).filter(line -> line.startsWith("04", 7)))
        .containsExactly(":020000040001F9");
    assertThat(lines[0x1_0000 / 16]).isEqualTo(":020000040001F9");
  }

  @Test
  void tableMayEndAtThe4GiBLimit() {
    ExportJob job = TestJobs.at(TestJobs.onePixel(), 0xFFFF_FFF7L);
    assertThat(decode(job, MemoryTarget.of(exporter(), job))).isEqualTo(TestJobs.table(job));
  }

  @Test
  void tableMayNotEndPast4GiB() {
    ExportJob job = TestJobs.at(TestJobs.onePixel(), 0xFFFF_FFF8L);
    MemoryTarget target = new MemoryTarget();
    assertThatThrownBy(() -> exporter().export(job, target, Progress.SILENT))
        .isInstanceOf(ExportRefusedException.class)
        .hasMessage(
            "scene walk: hex export: at: 0xFFFFFFF8; must be between 0 and 0xFFFFFFF7, so that the table of 9"
                + " bytes ends within 4 GiB [export-refused]");
    assertThat(target.names()).isEmpty();
  }

  @Test
  void tablePast4GiBIsRefused() {
    assertThat(HexExporter.faults(0x1_0000_0000L, 0)).isEmpty();
    assertThat(HexExporter.faults(0x1_0000_0001L, 0))
        .singleElement()
        .hasToString(
            "hex: 4294967297 bytes: must be at most 4294967296 bytes, all that its addresses can"
                + " tell apart; use bin");
  }
}
