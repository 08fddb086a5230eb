package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.render.ShowFrames;
import lampwright.exporters.ProjectJob;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The bench link of exported firmware on libsimavr. The computer's side and the controller's
 * receiver with its two bytes are a model of the tests' own (live_host.c), with a CRC of its own;
 * layouts are numbered by Python's {@code binascii.crc_hqx} over bits in reverse.
 */
class LiveLinkTest {
  /** By hand 10000: {@code -Dlampwright.liveFrames=10000}. */
  private static final String FRAMES =
      "frames=" + System.getProperty("lampwright.liveFrames", "60");

  private static final List<String> LATENCIES_US = List.of("0", "1000", "16000");

  @TempDir static Path folder;
  private static LiveBench bench;

  @BeforeAll
  static void compile() {
    bench = new LiveBench(folder);
  }

  /** A chain's firmware, as several tests use it, and the frames of its own show. */
  @SuppressWarnings("ArrayRecordComponent")
  private record Built(ProjectJob job, Path elf, byte[] own) {
    SimulatedFirmware.Report run(String layout, String... more) throws IOException {
      return bench.run(job, elf, own, layout, more);
    }
  }

  private static final Map<String, Built> BUILT = new HashMap<>();

  private static Built pixels(int count, String... more) throws Exception {
    String key = count + String.join("", more);
    if (!BUILT.containsKey(key)) {
      ProjectJob job = FirmwareJobs.on("atmega328p").chain("ws2812b", count).job();
      BUILT.put(key, new Built(job, bench.build(job, more), bench.firmware().table(job)));
    }
    return BUILT.get(key);
  }

  private static void assertPassed(SimulatedFirmware.Report report) {
    assertThat(report.json()).contains("\"passed\":true");
  }

  private static double number(SimulatedFirmware.Report report, String figure) {
    return Double.parseDouble(report.figure(figure));
  }

  /**
   * Every frame once, in order, to the last bit, with a computer that answers at once and later.
   * The least rates are nine tenths of what the lines leave: bytes of the packet and the answer's
   * last three of ten bits each, 24 bits of 1.3125 us a pixel (21 cycles).
   */
  @ParameterizedTest(name = "{0} pixels at {2} baud")
  @CsvSource({
    "16, 0x34AE, 500000, 541",
    "64, 0xA3FF, 500000, 148",
    "144, 0xB698, 500000, 67",
    "16, 0x34AE, 115200, 163",
    "144, 0xB698, 115200, 20"
  })
  void everyFrameIsOnTheWireAsItWasSent(int pixels, String layout, int baud, double leastRate)
      throws Exception {
    Built built =
        baud == 500_000 ? pixels(pixels) : pixels(pixels, "-DLAMPWRIGHT_LIVE_BAUD=" + baud + "UL");
    for (String latency : baud == 500_000 ? LATENCIES_US : LATENCIES_US.subList(0, 1)) {
      SimulatedFirmware.Report report =
          built.run(
              layout,
              "baud=" + baud,
              FRAMES,
              "latency-us=" + latency,
              "own-after=" + (latency.equals("0") ? 1 : 0));
      assertPassed(report);
      // The first question comes while a frame is sent; the second one is heard.
      assertThat(report.figure("questions")).isEqualTo("2");
      if (latency.equals("0")) {
        assertThat(number(report, "framesPerSecond")).isGreaterThan(leastRate);
        // What README.md has is the rate that is measured here.
        assertThat(LiveRate.of(built.job().project().rig(), baud).framesPerSecond())
            .isCloseTo(number(report, "framesPerSecond"), withPercentage(2));
      }
      // A byte waits for far less than the next one takes.
      assertThat(number(report, "bytesKept")).isEqualTo(1);
      assertThat(number(report, "longestWaitCycles")).isLessThan(number(report, "byteCycles") / 2);
    }
  }

  /** Damaged, cut, foreign and repeated packets, and such while the own show runs. */
  @ParameterizedTest
  @CsvSource({"16, 0x34AE", "144, 0xB698"})
  void whatIsNoPacketChangesNothing(int pixels, String layout) throws Exception {
    SimulatedFirmware.Report report =
        pixels(pixels)
            .run(layout, "frames=90", "faults=1", "noise=1", "own-first=40", "own-after=12");
    assertPassed(report);
    assertThat(number(report, "faultyPackets")).isGreaterThan(50);
  }

  /** Packet after packet, so that most bytes are lost while a frame is sent. */
  @Test
  void computerThatWaitsForNothingGetsWholeFramesOrNone() throws Exception {
    SimulatedFirmware.Report report = pixels(64).run("0xA3FF", "frames=200", "rude=1");
    assertPassed(report);
    assertThat(number(report, "shownRudely")).isGreaterThan(50);
  }

  /** A packet of 9 bytes takes less than the reset of the pixels. */
  @Test
  void shortFramesWaitForTheReset() throws Exception {
    SimulatedFirmware.Report report = pixels(1).run("0x4A8A", "frames=100");
    assertPassed(report);
    assertThat(number(report, "leastResetUs")).isGreaterThanOrEqualTo(280);
  }

  @Test
  void chainsAndOutputsGetTheirBytes() throws Exception {
    ProjectJob job =
        FirmwareJobs.on("atmega328p", 16)
            .chain("sk6812-rgbw", 4)
            .chain("ws2812b", 4)
            .output("PB1")
            .output("PB2")
            .job();
    SimulatedFirmware.Report report =
        bench.run(
            job, bench.build(job), bench.firmware().table(job), "0x6442", "frames=45", "faults=1");
    assertPassed(report);
  }

  @ParameterizedTest
  @CsvSource({"atmega328p, 8, 0xC6, 500000", "atmega32u4, 16, 0xCE, 500000"})
  void otherClocksAndLinesDoTheSame(String controller, int clock, String register, int baud)
      throws Exception {
    ProjectJob job = FirmwareJobs.on(controller, clock).chain("ws2812b", 16).job();
    SimulatedFirmware.Report report =
        bench.run(
            job,
            bench.build(job),
            bench.firmware().table(job),
            "0x34AE",
            "frames=45",
            "faults=1",
            "udr=" + register,
            "baud=" + baud);
    assertPassed(report);
    assertThat(number(report, "bytesKept")).isEqualTo(1);
  }

  @Test
  void silenceIsDarkWhereItIsBuiltSo() throws Exception {
    assertPassed(
        pixels(16, "-DLAMPWRIGHT_LIVE_THEN_DARK=1")
            .run("0x34AE", "frames=20", "dark=1", "own-after=2"));
  }

  /**
   * Situations begin anew after the silence. Servo pulses come only while it is live: the interrupt
   * routines that measure them must cost no byte, and what they measured is old then.
   */
  @Test
  void situationsAreBackAfterTheSilence() throws Exception {
    Project project =
        ProjectReader.read(Path.of("../samples/recovery-tractor.lampwright.json"))
            .project()
            .orElseThrow();
    ProjectJob job = ProjectJob.of(project, project.scenes());
    SimulatedFirmware.Report report =
        bench.run(
            job,
            bench.build(job),
            undriven(job, 30),
            "0x337F",
            "frames=60",
            "faults=1",
            "own-first=12",
            "own-after=25",
            "pulses=D2",
            "pulses=D4");
    assertPassed(report);
  }

  /** What the engine makes of a show of which no input is read. */
  private static byte[] undriven(ProjectJob job, int frames) {
    ShowFrames show = new ShowFrames(job.show().orElseThrow());
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    byte[] frame = new byte[show.frameBytes()];
    for (int i = 0; i < frames; i++) {
      show.next(frame);
      all.writeBytes(frame);
    }
    return all.toByteArray();
  }

  /** As a hobby IDE builds it, with interrupts of its clock all the while. */
  @ParameterizedTest
  @ValueSource(ints = {16, 8})
  void exampleOfAHobbyIdeFollowsToo(int megahertz) throws Exception {
    ProjectJob job = FirmwareJobs.on("atmega328p", megahertz).chain("ws2812b", 16).job();
    bench.firmware().export(job);
    bench
        .firmware()
        .change("src/lampwright_config.h", "define LAMPWRIGHT_LIVE 0", "define LAMPWRIGHT_LIVE 1");
    Path elf =
        bench
            .firmware()
            .compileExample(job, "PlayScene", Path.of("src/test/wire").toAbsolutePath());
    SimulatedFirmware.Report report =
        bench.run(job, elf, bench.firmware().table(job), "0x34AE", "frames=45", "faults=1");
    assertPassed(report);
  }
}
