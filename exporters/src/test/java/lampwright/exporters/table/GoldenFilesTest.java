package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;
import lampwright.exporters.ExportJob;
import lampwright.exporters.Exporter;
import lampwright.exporters.MemoryTarget;
import lampwright.exporters.TestJobs;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The files of a small scene as they were first released; builders' own code rests on them. */
class GoldenFilesTest {
  @ParameterizedTest
  @ValueSource(strings = {"c", "bin", "hex", "csv"})
  void filesAreAsReleased(String key) throws IOException {
    ExportJob job = TestJobs.at(TestJobs.small(), 0x7000);
    Exporter exporter =
        TableExporters.all().stream().filter(e -> e.key().equals(key)).findFirst().orElseThrow();
    MemoryTarget files = MemoryTarget.of(exporter, job);
    for (String name : files.names()) {
      try (InputStream golden = getClass().getResourceAsStream("/golden/" + name)) {
        assertThat(files.bytes(name))
            .as(name)
            .isEqualTo(Objects.requireNonNull(golden, name).readAllBytes());
      }
    }
  }
}
