package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import lampwright.exporters.ExportJob;
import lampwright.exporters.MemoryTarget;
import lampwright.exporters.TestJobs;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Every format carries the same bytes. */
class SameBytesTest {
  @Provide
  Arbitrary<ExportJob> jobs() {
    return RandomJobs.jobs();
  }

  @Property(tries = 300, seed = "20260303", edgeCases = EdgeCasesMode.NONE)
  void everyFormatCarriesTheFrames(
      @ForAll("jobs") ExportJob job, @ForAll("addresses") long address) {
    byte[] table = TestJobs.table(job);
    assertThat(MemoryTarget.of(new BinExporter(), job).bytes(job.fileName("bin"))).isEqualTo(table);
    ExportJob placed = TestJobs.at(job, address);
    String hex = MemoryTarget.of(new HexExporter(), placed).text(job.fileName("hex"));
    assertThat(new IntelHexReader(hex).bytesFrom(address)).isEqualTo(table);
    String csv = MemoryTarget.of(new CsvExporter(), job).text(job.fileName("csv"));
    assertThat(CsvReader.bytes(csv)).isEqualTo(table);
    String source = MemoryTarget.of(new CExporter(), job).text(job.fileName("c"));
    assertThat(CSourceReader.bytes(source)).isEqualTo(table);
  }

  @Provide
  Arbitrary<Long> addresses() {
    return Arbitraries.longs().between(0, 0xFFFE_0000L);
  }
}
