package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import lampwright.exporters.ProjectJob;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The bench link of exported firmware on libsimavr. The computer's side and the controller's
 * receiver with its two bytes are a model of the tests' own (live_host.c), with a CRC of its own;
 * layouts are numbered by Python's binascii.crc_hqx over bits turned round.
 */
class LiveLinkTest {
  /** More by hand: -Dlampwright.liveFrames=10000. */
  private static final String FRAMES = System.getProperty("lampwright.liveFrames", "60");

  @TempDir static Path folder;
  private static LiveBench bench;

  @BeforeAll
  static void compile() {
    bench = new LiveBench(folder);
  }

  private static ProjectJob pixels(int count) {
    return FirmwareJobs.on("atmega328p").chain("ws2812b", count).job();
  }

  private static int layout(int pixels) {
    return switch (pixels) {
      case 1 -> 0x4A8A;
      case 16 -> 0x34AE;
      case 64 -> 0xA3FF;
      case 144 -> 0xB698;
      default -> throw new IllegalArgumentException("pixels: " + pixels);
    };
  }

  private static void assertPassed(SimulatedFirmware.Report report) {
    assertThat(report.json()).contains("\"passed\":true");
  }

  @ParameterizedTest(name = "{0} pixels, answers of the computer after {1} us, {2} baud")
  @CsvSource({
    "16, 0, 500000", "16, 1000, 500000", "16, 16000, 500000",
    "64, 0, 500000", "64, 1000, 500000", "64, 16000, 500000",
    "144, 0, 500000", "144, 1000, 500000", "144, 16000, 500000",
    "16, 0, 115200", "64, 1000, 115200", "144, 0, 115200"
  })
  void everyFrameIsOnTheWireAsItWasSent(int pixels, int latencyUs, int baud) throws Exception {
    ProjectJob job = pixels(pixels);
    Path elf = bench.build(job, "-DLAMPWRIGHT_LIVE_BAUD=" + baud + "UL");
    SimulatedFirmware.Report report =
        bench.run(
            job,
            elf,
            bench.firmware().table(job),
            layout(pixels),
            "frames=" + FRAMES,
            "latency-us=" + latencyUs,
            "baud=" + baud,
            "own-after=1");
    assertPassed(report);
    System.out.println(pixels + " " + latencyUs + " " + baud + " " + report.json());
  }
}
