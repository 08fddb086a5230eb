package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportTarget;
import lampwright.exporters.Exporter;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.TestJobs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A scene of 1,000,000 frames exports in a heap that could not hold its table. */
class StreamingTest {
  private static final int PIXELS = 16;

  @TempDir Path folder;

  /** Exports the greatest scene in every format, and prints the bytes of each. */
  public static void main(String[] arguments) throws Exception {
    for (Exporter exporter : TableExporters.all()) {
      CountingTarget target = new CountingTarget();
      exporter.export(greatestScene(), target, Progress.SILENT);
      System.out.println(exporter.key() + " " + target.bytes);
    }
  }

  @Test
  void aMillionFramesExportInASmallHeap() {
    long tableBytes = greatestScene().table().bytes();
    assertThat(tableBytes).isEqualTo(1_000_000L * 4 * PIXELS);
    Path java = Path.of(System.getProperty("java.home"), "bin", "java");
    // Half of the table, and an eighth of the 256 MiB that are promised.
    byte[] out =
        new OutsideTools.Tool(java)
            .run(
                folder,
                "-Xmx32m",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                StreamingTest.class.getName())
            .quietOut();
    List<String> lines = new String(out, StandardCharsets.US_ASCII).lines().toList();
    assertThat(lines).hasSize(4);
    assertThat(lines).contains("bin " + tableBytes);
    // 44 characters a record of 16 bytes; 976 records of type 04 of 16; the end of 12.
    assertThat(lines)
        .contains("hex " + (tableBytes / 16 * 44 + (tableBytes - 1) / 65536 * 16 + 12));
  }

  private static ExportJob greatestScene() {
    return TestJobs.job(
        "Long night",
        Rig.of(
            List.of(TestJobs.rgbw("deck", PIXELS)),
            List.of(),
            List.of(TestJobs.lamp("deck", TestJobs.run("deck", 0, PIXELS)))),
        TestJobs.scene("night", 20_000_000, 50, true, TestJobs.walk(20, "deck")));
  }

  /** Counts bytes and keeps none. */
  private static final class CountingTarget implements ExportTarget {
    private long bytes;

    @Override
    public OutputStream open(String fileName) {
      return new OutputStream() {
        @Override
        public void write(int b) {
          bytes++;
        }

        @Override
        public void write(byte[] source, int from, int count) {
          bytes += count;
        }
      };
    }
  }
}
