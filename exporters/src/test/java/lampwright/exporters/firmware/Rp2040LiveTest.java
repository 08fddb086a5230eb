package lampwright.exporters.firmware;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.TestJobs;
import lampwright.exporters.packed.play.RandomShow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The bench link of an RP2040's folder, built by its Makefile, on rp2040js: live.mjs tells how. */
class Rp2040LiveTest {
  private static final Path HOST = Path.of("src/test/js/live.mjs").toAbsolutePath();

  /** Of 16 GRB pixels: LiveLayoutTest. */
  private static final int LAYOUT = 0x34AE;

  private final OutsideTools tools = OutsideTools.onThisMachine();

  @TempDir Path folder;

  private OutputStream open(String name) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.resolveSibling(""));
    return Files.newOutputStream(file);
  }

  private void build(ProjectJob job) throws Exception {
    new FirmwareExporter().export(job, this::open, Progress.SILENT);
    tools.find("arm-none-eabi-gcc", "gcc-arm-none-eabi");
    tools.find("make", "make").run(folder, "-s", "HOST_CC=gcc", "LIVE=1").out();
  }

  /** The first pair of pins is used, and the next one where GP0 is taken. */
  @ParameterizedTest
  @CsvSource({"GP2, 2, 0, true", "GP0, 0, 1, false"})
  void framesAreOnTheWireAndTheShowIsBackAfterTheSilence(
      String pin, int number, int uart, boolean faulty) throws Exception {
    ProjectJob job = FirmwareJobs.on("rp2040").chain("ws2812b", 16, pin).job();
    build(job);
    byte[] own =
        TestJobs.table(ExportJob.of(job.project(), job.scenes().get(0), ExportOptions.DEFAULT));
    Files.write(folder.resolve("own.bin"), own);
    String words =
        """
        {"uart": %d, "pin": %d, "bytes": 48, "layout": %d, "baud": 500000, "resetUs": 280,
         "frames": 30, "own": "own.bin", "ownFirst": 2, "ownAfter": 2, "faulty": %b}
        """
            .formatted(uart, number, LAYOUT, faulty);
    OutsideTools.Result result =
        tools
            .findNode(HOST.resolveSibling(""), "rp2040js")
            .run(folder, HOST.toString(), folder.resolve("show.uf2").toString(), words);
    SimulatedFirmware.Report report =
        new SimulatedFirmware.Report(new String(result.out(), UTF_8) + result.errors());
    assertThat(report.json()).contains("\"passed\":true", "\"taken\":30");
    if (!faulty) {
      // Packet and answer, 59 bytes of 20 us; nine tenths of it.
      assertThat(Double.parseDouble(report.figure("framesPerSecond"))).isGreaterThan(762);
    }
  }

  @Test
  void folderWithSituationsBuildsToo() throws Exception {
    build(new RandomShow(4).job("rp2040"));
    assertThat(folder.resolve("show.uf2")).exists();
  }
}
