package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import lampwright.exporters.ExportJob;
import lampwright.exporters.MemoryTarget;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.OutsideTools.Tool;
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

  @Property(tries = 6, seed = "20260304", edgeCases = EdgeCasesMode.NONE)
  void compiledProgramPrintsTheFrames(@ForAll("jobs") ExportJob job) throws IOException {
    Tool gcc = OutsideTools.onThisMachine().findCompiler("gcc", "gcc", "stdio.h", "libc6-dev");
    Path folder = Files.createTempDirectory("lampwright-c");
    try {
      MemoryTarget.of(new CExporter(), job).saveTo(folder);
      byte[] printed =
          CProgram.printTable(
              folder,
              job,
              arguments -> {
                String[] flags = {"-std=c99", "-Wall", "-Wextra", "-Wpedantic", "-Werror"};
                return gcc.run(
                    folder, Stream.of(flags, arguments).flatMap(Stream::of).toArray(String[]::new));
              });
      assertThat(printed).isEqualTo(TestJobs.table(job));
    } finally {
      try (Stream<Path> files = Files.walk(folder)) {
        List<Path> all = files.sorted(Comparator.reverseOrder()).toList();
        for (Path file : all) {
          Files.delete(file);
        }
      }
    }
  }
}
