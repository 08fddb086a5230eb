package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.ProjectJob;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The driver as exported, on libsimavr: each bit's times, resets, PWM, frame rates, interrupts that
 * come in between; faults that are put in are found; sigrok-cli reads the same waveforms.
 */
class AvrDriverTest {
  /** More than the player takes for a frame of eight pixels. */
  private static final double DECODING_US = 200;

  private static final Path MAIN = Path.of("src/test/wire/main.c").toAbsolutePath();
  private static final Path SIGROK = Path.of("src/test/wire/sigrok.sh").toAbsolutePath();

  @TempDir static Path folder;
  private static SimulatedFirmware firmware;

  @BeforeAll
  static void buildProver() {
    firmware = new SimulatedFirmware(folder);
  }

  static Stream<Arguments> rigs() {
    return Stream.of(
        rig("edge of a port", on("atmega328p", 16).chain("ws2812b", 8, "PD7")),
        rig("every third port", on("atmega328p", 16).chain("sk6812-rgbw", 6, "PC5").rate("25")),
        rig("256 pixels", on("atmega328p", 16).chain("ws2812b", 256, "PD4").frames(4)),
        rig("80 a second", on("atmega328p", 16).chain("ws2813", 256, "PD4").rate("80").frames(4)),
        rig(
            "eight chains of four kinds",
            on("atmega328p", 16)
                .rate("40")
                .chain("ws2812b", 1, "PB0")
                .chain("sk6812-rgbw", 1, "PB1")
                .chain("ws2813", 1, "PB2")
                .chain("ws2812b", 2, "PB3")
                .chain("sk6812-rgbw", 2, "PD0")
                .chain("ws2815", 1, "PD1")
                .chain("ws2812b", 1, "PD2")
                .chain("ws2811", 1, "PD3")),
        rig("usual outputs", on("atmega328p", 16).output().output().output().output()),
        rig(
            "outputs on timers 0 and 2",
            on("atmega328p", 16).output("PD5").output("PD6").output("PB3").output("PD3")),
        rig(
            "outputs on timers 0 and 1",
            on("atmega328p", 16).output("PD5").output("PD6").output("PB1").output("PB2")),
        rig("chain and outputs", on("atmega328p", 16).chain("ws2812b", 8).output().output("PD3")),
        rig(
            "two ports, 8 MHz",
            on("atmega328p", 8).chain("ws2812b", 15, "PB0").chain("ws2812b", 8, "PD6").output()),
        rig(
            "five ports",
            on("atmega32u4", 16)
                .chain("sk6812-rgbw", 2, "PB4")
                .chain("ws2812b", 1, "PC7")
                .chain("sk6812-rgbw", 1, "PD7")
                .chain("ws2812b", 1, "PE6")
                .chain("sk6812-rgbw", 1, "PF4")),
        rig(
            "32u4 outputs",
            on("atmega32u4", 16).chain("ws2812b", 8).output().output().output("PD0")),
        rig("32u4, timer 3", on("atmega32u4", 8).chain("ws2812b", 8).output("PC6").output("PB7")),
        rig(
            "tiny, timer 0",
            on("attiny85", 16).chain("sk6812-rgbw", 8).output("PB0").output("PB1")),
        rig("tiny, timer 1", on("attiny85", 8).chain("ws2812b", 8, "PB3").output("PB4")),
        rig("tiny, five chains", everyPin()));
  }

  private static FirmwareJobs everyPin() {
    FirmwareJobs jobs = on("attiny85", 8);
    for (int bit = 0; bit < 5; bit++) {
      jobs.chain("ws2812b", 1 + bit, "PB" + bit);
    }
    return jobs;
  }

  private static Arguments rig(String name, FirmwareJobs jobs) {
    return Arguments.of(name, jobs);
  }

  private static FirmwareJobs on(String controller, int megahertz) {
    return FirmwareJobs.on(controller, megahertz);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("rigs")
  void everyBitAndDutyIsProved(String name, FirmwareJobs jobs) throws Exception {
    assertProved(firmware.prove(jobs.job()));
  }

  /** Cycles that are known good; a change of these is a change for every builder. */
  @ParameterizedTest
  @CsvSource({
    "atmega328p, 16, ws2812b, 6 15 13 8",
    "atmega328p, 16, sk6812-rgbw, 5 14 10 9",
    "atmega328p, 16, ws2813, 6 15 14 7",
    "atmega32u4, 16, ws2812b-2020, 5 14 13 6",
    "attiny85, 16, ws2811, 4 15 10 9",
    "attiny85, 8, ws2812b, 3 7 6 4",
    "attiny85, 8, sk6812-rgbw, 2 7 5 4",
    "attiny85, 8, ws2813, 3 7 7 3",
    "attiny85, 8, ws2815, 2 7 6 3"
  })
  void everyBitHasTheseCycles(String controller, int clock, String type, String cycles)
      throws Exception {
    ProjectJob job = on(controller, clock).chain(type, 3).job();
    SimulatedFirmware.Report report = firmware.prove(job);
    assertProved(report);
    String[] names = {"t0h", "t0l", "t1h", "t1l"};
    String[] wanted = cycles.split(" ", -1);
    for (int i = 0; i < names.length; i++) {
      assertThat(report.json())
          .containsPattern(
              "\""
                  + names[i]
                  + "\":\\{[^}]*\"minCycles\":"
                  + wanted[i]
                  + ",\"maxCycles\":"
                  + wanted[i]
                  + ",");
    }
  }

  /** A decoder for addressable LEDs that knows nothing of us. */
  @ParameterizedTest
  @CsvSource({
    "atmega328p, 16, ws2812b",
    "atmega328p, 16, sk6812-rgbw",
    "atmega328p, 16, ws2815",
    "attiny85, 8, ws2812b",
    "attiny85, 8, sk6812-rgbw",
    "attiny85, 8, ws2812b-2020"
  })
  void anotherProgramReadsTheSameBits(String controller, int clock, String type) throws Exception {
    OutsideTools tools = OutsideTools.onThisMachine();
    tools.find("sigrok-cli", "sigrok-cli");
    ProjectJob job = on(controller, clock).chain(type, 6, "PB0").job();
    firmware.export(job);
    Path wave = folder.resolve("wave.vcd");
    assertProved(
        firmware.run(job, firmware.compile(job, firmware.main()), "--vcd", wave.toString()));
    int bytes = job.project().rig().chains().get(0).bytes();
    String frame = Integer.toString(bytes);
    String said =
        new String(
            tools
                .find("sh", "dash")
                .run(
                    folder,
                    SIGROK.toString(),
                    wave.toString(),
                    "B0",
                    folder.resolve("table.bin").toString(),
                    frame,
                    "0",
                    frame,
                    "2")
                .quietOut(),
            StandardCharsets.UTF_8);
    assertThat(said).contains("reads the same " + bytes * 8 * 2 + " bits");
  }

  @Test
  void frameRateIsExactOnAverage() throws Exception {
    ProjectJob job = on("atmega328p", 16).chain("ws2812b", 1).rate("59.94").frames(40).job();
    firmware.export(job);
    SimulatedFirmware.Report report =
        firmware.run(job, firmware.compile(job, firmware.main()), "--slow", "--frames", "400");
    assertProved(report);
    // 1 / 59.94 s is 16,683.35 us.
    assertThat(Double.parseDouble(report.figure("averageUs"))).isBetween(16_683.1, 16_683.6);
  }

  @ParameterizedTest
  @CsvSource({"atmega328p, 16, ws2812b, 300", "attiny85, 8, sk6812-rgbw, 80"})
  void loopThatSendsAsFastAsItCanLeavesEveryReset(
      String controller, int clock, String type, int resetUs) throws Exception {
    ProjectJob job = on(controller, clock).chain(type, 8).job();
    firmware.export(job);
    SimulatedFirmware.Report report = unpaced(job, firmware.compile(job, MAIN, "-DTEST_UNPACED"));
    assertProved(report);
    assertThat(Double.parseDouble(report.figure("leastResetUs")))
        .isBetween((double) resetUs, resetUs + DECODING_US);
  }

  // The prover expects no frame rate and leaps over nothing.
  private static SimulatedFirmware.Report unpaced(ProjectJob job, Path elf) throws IOException {
    return firmware.run(
        job,
        elf,
        words ->
            words.filter(
                word ->
                    !word.equals("--skip-idle")
                        && !word.equals("--rate")
                        && !word.equals("50000")));
  }

  /** An interrupt routine of 20 us, every 80 us; gaps of up to 26 us are its doing. */
  @ParameterizedTest
  @CsvSource({
    "atmega328p, 16, ws2812b, 5, 42",
    "atmega328p, 16, ws2815, 5, 42",
    "attiny85, 16, ws2812b, 4, 42",
    "attiny85, 8, ws2812b, '', 20",
    "attiny85, 8, sk6812-rgbw, '', 20",
    "attiny85, 8, ws2815, '', 20"
  })
  void interruptsAreLetInBetweenBits(
      String controller, int clock, String type, String otherPin, int mostCycles) throws Exception {
    ProjectJob job = on(controller, clock).chain(type, 32, "PB0").frames(6).job();
    firmware.export(job);
    SimulatedFirmware.Report report = withGaps(job, busy(job, otherPin));
    assertProved(report);
    assertThat(Integer.parseInt(report.figure("gapsStretched"))).isPositive();
    // Two bits, and no more.
    assertThat(Integer.parseInt(report.figure("longestOffCycles"))).isLessThanOrEqualTo(mostCycles);
  }

  // The routine runs by timer 0, so the frame clock of an ATtiny85 moves to timer 1.
  private static Path busy(ProjectJob job, String otherPin, String... more) throws IOException {
    List<String> words = new ArrayList<>(List.of("-DTEST_BUSY=20"));
    if (!otherPin.isEmpty()) {
      words.add("-DTEST_BUSY_BIT=" + otherPin);
    }
    words.addAll(List.of(more));
    String clock = "src/lampwright_clock.c";
    if (job.project().rig().controller().orElseThrow().id().equals("attiny85")) {
      firmware.change(clock, "TCCR0A = 0;", "TCCR1 = 1 << CS13 | 1 << CS11 | 1 << CS10;");
      firmware.change(clock, "TCCR0B = 1 << CS02 | 1 << CS00;", "");
      firmware.change(clock, "TCNT0", "TCNT1");
    }
    return firmware.compile(job, MAIN, words.toArray(String[]::new));
  }

  private static SimulatedFirmware.Report withGaps(ProjectJob job, Path elf) throws IOException {
    return firmware.run(
        job,
        elf,
        words ->
            words
                .filter(word -> !word.equals("--skip-idle"))
                .map(word -> word.startsWith("pin=") ? word + ",gap=26" : word));
  }

  /** What README.md says must not be done where the whole port is written. */
  @Test
  void changeOfTheSamePortIsUndoneWhereTheWholePortIsWritten() throws Exception {
    ProjectJob job = on("attiny85", 8).chain("ws2812b", 32, "PB0").frames(6).job();
    firmware.export(job);
    assertThat(Files.readString(firmware.sources().resolve("README.md")))
        .contains("| other pins of the port of c0 | **must not** be changed in a routine |");
    assertThat(withGaps(job, busy(job, "4")).passed()).isFalse();
  }

  @Test
  void interruptsThatWereOffAtTheCallStayOff() throws Exception {
    ProjectJob job = on("attiny85", 8).chain("ws2812b", 32, "PB0").frames(6).job();
    firmware.export(job);
    SimulatedFirmware.Report report = firmware.run(job, busy(job, "", "-DTEST_OFF"));
    assertProved(report);
    assertThat(report.figure("served")).isEqualTo("0");
  }

  @ParameterizedTest
  @CsvSource({"atmega328p, 16, 5", "attiny85, 8, 4"})
  void interruptsCanBeHeldOff(String controller, int clock, String otherPin) throws Exception {
    ProjectJob job = on(controller, clock).chain("ws2812b", 32, "PB0").frames(6).job();
    firmware.export(job);
    firmware.change("src/lampwright_config.h", "INTERRUPTS 1", "INTERRUPTS 0");
    assertProved(
        firmware.run(
            job, busy(job, otherPin), words -> words.filter(word -> !word.equals("--skip-idle"))));
  }

  /** Scaled by 129/256, as lampwright_show_brightness says: the table is scaled by the test. */
  @Test
  void brightnessScalesWhatIsSent() throws Exception {
    ProjectJob job = on("attiny85", 8).chain("ws2812b", 8).output().job();
    firmware.export(job);
    Path elf = firmware.compile(job, MAIN, "-DTEST_DIMMED=128");
    byte[] table = firmware.table(job);
    for (int i = 0; i < table.length; i++) {
      table[i] = (byte) ((table[i] & 0xFF) * 129 / 256);
    }
    assertProved(firmware.run(job, elf, table, words -> words));
  }

  @Nested
  class Faults {
    @Test
    void areFound() throws Exception {
      ProjectJob job =
          on("atmega328p", 16).chain("ws2812b", 8, "PB0").output("PB1").frames(20).job();
      firmware.export(job);
      Path elf = firmware.compile(job, firmware.main());
      byte[] table = firmware.table(job);
      assertProved(firmware.run(job, elf, table, words -> words));

      assertFound("framesWrong", firmware.run(job, elf, changed(table, 133), words -> words));
      assertFound("dutiesWrong", firmware.run(job, elf, changed(table, 124), words -> words));
      byte[] oneLess = Arrays.copyOf(table, table.length - 25);
      assertFound("framesWrong", firmware.run(job, elf, oneLess, words -> words));
      for (String limit :
          new String[] {
            "t0h-max=370",
            "t0h-min=380",
            "t1h-max=810",
            "t1h-min=815",
            "t0l-max=930",
            "t0l-min=940",
            "t1l-max=499",
            "t1l-min=501",
            "period-max=1300",
            "period-min=1320"
          }) {
        String name = limit.split("=", -1)[0];
        assertFound("bitsOutsideLimits", replaced(job, elf, name + "=[0-9.]+", limit));
      }
      assertFound("faultCount", replaced(job, elf, "^50000$", "50200"));
      assertFound("faultCount", replaced(job, elf, "reset=300", "reset=25000"));
      assertFound("framesWrong", replaced(job, elf, "bytes=24,", "bytes=21,"));
      assertFound("dutiesWrong", replaced(job, elf, "com=0x80.7", "com=0x80.6"));
      assertFound("faultCount", replaced(job, elf, "0x81=0x03", "0x81=0x02"));
    }

    private byte[] changed(byte[] table, int at) {
      byte[] other = table.clone();
      other[at] ^= 1;
      return other;
    }

    private SimulatedFirmware.Report replaced(ProjectJob job, Path elf, String what, String by)
        throws IOException {
      return firmware.run(job, elf, words -> words.map(word -> word.replaceFirst(what, by)));
    }

    private void assertFound(String figure, SimulatedFirmware.Report report) {
      assertThat(report.passed()).as(figure).isFalse();
      assertThat(report.figures(figure)).as(report.json()).anyMatch(f -> !f.equals("0"));
    }
  }

  private static void assertProved(SimulatedFirmware.Report report) {
    assertThat(report.json()).contains("\"passed\":true");
  }
}
