package lampwright.exporters.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.zip.CRC32;
import lampwright.engine.document.Project;
import lampwright.engine.situation.Drive;
import lampwright.exporters.firmware.DriveSignal;
import lampwright.exporters.firmware.DrivenShow;
import lampwright.exporters.firmware.Uf2Program;
import lampwright.exporters.packed.play.RandomShow;
import lampwright.exporters.proof.rp2040.PinListener;
import lampwright.exporters.proof.rp2040.Rp2040;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * UF2 files with situations on the model of the controller: pulses and levels on its pins, and the
 * frames of the engine, byte for byte.
 */
class DriveProofTest {
  private static final Path SAMPLES = Path.of("..", "samples");

  /** Rates at which the pulses of an output can be measured. */
  private static final int MOST_RATE = 100;

  @TempDir Path folder;

  private static ProofReport prove(DrivenShow driven, byte[] uf2) throws Uf2Exception {
    return prove(driven, driven.signal(), uf2);
  }

  private static ProofReport prove(DrivenShow driven, DriveSignal signal, byte[] uf2)
      throws Uf2Exception {
    var rig = driven.job().project().rig();
    return SceneProof.ofDrive(rig, driven.show().clock(), signal, driven.frames(), uf2);
  }

  private static void assertProved(DrivenShow driven) throws Exception {
    ProofReport report = prove(driven, driven.uf2());
    assertThat(report.faults()).isEmpty();
    assertThat(report.passed()).isTrue();
    int bytes = driven.frames().length / driven.drive().frames(driven.show().clock()).orElseThrow();
    assertThat(Integer.parseInt(report.figures().get("/framesCompared")))
        .isEqualTo(driven.frames().length / bytes);
    assertThat(report.figures()).containsEntry("/bitsOutsideLimits", "0");
  }

  @ParameterizedTest
  @ValueSource(strings = {"recovery-tractor", "mountain-rescue"})
  void recordedDrivesOfTheSamplesGiveTheFramesOfTheEngine(String name) throws Exception {
    String json = Files.readString(SAMPLES.resolve(name + ".lampwright.json"));
    Project project = DrivenShow.onRp2040(json, folder);
    byte[] csv = Files.readAllBytes(SAMPLES.resolve(name + ".drive.csv"));
    assertProved(DrivenShow.of(project, DrivenShow.recorded(project, csv)));
  }

  static LongStream seeds() {
    return LongStream.range(0, 10_000)
        .filter(seed -> new RandomShow(seed).framesPerSecond().intValue() <= MOST_RATE)
        .limit(Integer.getInteger("lampwright.driven", 8));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void randomShowsGiveTheFramesOfTheEngine(long seed) throws Exception {
    RandomShow made = new RandomShow(seed);
    int fps = Math.max(1, made.framesPerSecond().intValue());
    Project project = made.project("rp2040");
    assertProved(DrivenShow.of(project, made.drive(Math.max(1500, 12_000 / fps))));
  }

  /** One channel and its threshold, one switch, and an output beside a chain. */
  private DrivenShow plain(Drive drive) {
    return DrivenShow.of(plain("", "50"), drive);
  }

  private Project plain(String inputs, String rate) {
    return DrivenShow.plain(inputs, rate, folder);
  }

  private static Drive.Row row(long ms, int input, int value) {
    return new Drive.Row(java.math.BigDecimal.valueOf(ms), input, value);
  }

  private static Drive pulses(int count, int... widths) {
    List<Drive.Row> rows = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      rows.add(row(20L * i + (i == 0 ? 0 : 7), 0, widths[i % widths.length]));
      if (i % 5 == 4) {
        rows.add(row(20L * i + 9, 1, i / 5 % 2));
      }
    }
    return new Drive(rows);
  }

  /**
   * Widths a microsecond apart: above the threshold, at it (which changes nothing), and below. The
   * first ends as frame 0 begins.
   */
  private DrivenShow beside() {
    return plain(pulses(30, 1501, 1500, 1499, 1500, 1501, 1499, 1500));
  }

  @Test
  void widthsAMicrosecondBesideAThresholdAreToldApart() throws Exception {
    assertProved(beside());
  }

  /** With a pulse under way when the inputs are begun, 25 ms before the first frame. */
  private static DriveSignal withPulseUnderWay(DrivenShow driven) {
    List<DriveSignal.Edge> edges = new ArrayList<>(driven.signal().edges());
    var pin = driven.job().project().rig().inputs().get(0).pin().orElseThrow();
    edges.add(new DriveSignal.Edge(-50_000_000, pin, true));
    edges.add(new DriveSignal.Edge(-23_400_000, pin, false));
    edges.sort(Comparator.comparingLong(DriveSignal.Edge::ns));
    return new DriveSignal(edges, List.of());
  }

  private DrivenShow withoutFirst(DrivenShow driven) {
    return plain(new Drive(driven.drive().rows().subList(1, driven.drive().rows().size())));
  }

  @Test
  void pulseUnderWayIsNone() throws Exception {
    DrivenShow driven = withoutFirst(beside());
    ProofReport report = prove(driven, withPulseUnderWay(driven), driven.uf2());
    assertThat(report.faults()).isEmpty();
    assertThat(report.passed()).isTrue();
  }

  /** 0, 100, 5,000 us and one that never ends: none of a servo. */
  @Test
  void pulsesOfNoServoAreIgnored() throws Exception {
    assertProved(plain(pulses(40, 1600, 100, 0, 5000, 799, 2201, 100, 0, 5000, 799, 2201)));
    List<Drive.Row> rows = new ArrayList<>(pulses(12, 1600).rows());
    rows.add(row(600, 1, 1));
    DrivenShow driven = plain(new Drive(rows));
    List<DriveSignal.Edge> edges = new ArrayList<>(driven.signal().edges());
    // After the last pulse the pin goes high and stays so: stopped in the midst of one.
    edges.add(
        new DriveSignal.Edge(
            260_000_000, driven.job().project().rig().inputs().get(0).pin().get(), true));
    edges.sort(Comparator.comparingLong(DriveSignal.Edge::ns));
    ProofReport report = prove(driven, new DriveSignal(edges, List.of()), driven.uf2());
    assertThat(report.faults()).isEmpty();
  }

  /** More pulses than a state machine keeps come in a frame of half a second, and all are seen. */
  @Test
  void channelsAreReadBetweenFrames() throws Exception {
    Project project =
        plain(
            ", {\"id\": \"p\", \"kind\": \"servo-pulse\", \"pin\": \"GP12\", \"centre\": \"power-up\"}",
            "2");
    List<Drive.Row> rows = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      rows.add(row(5 + 20L * i, 0, i / 25 % 2 == 0 ? 1600 : 1400));
      rows.add(row(15 + 20L * i, 2, 1500));
    }
    assertProved(DrivenShow.of(project, new Drive(rows)));
  }

  /** Edges by chance on a pin that nothing is plugged into; the rest goes on as it should. */
  @Test
  void noiseOnAFloatingPinTouchesNothingElse() throws Exception {
    Project project =
        plain(", {\"id\": \"n\", \"kind\": \"servo-pulse\", \"pin\": \"GP12\"}", "50");
    DrivenShow driven =
        DrivenShow.of(project, pulses(30, 1501, 1500, 1499, 1500, 1501, 1499, 1500));
    List<DriveSignal.Edge> edges = new ArrayList<>(driven.signal().edges());
    Random random = new Random(39);
    var pin = project.rig().inputs().get(2).pin().orElseThrow();
    boolean level = false;
    for (long ns = 0; ns < 500_000_000; ns += 200 + random.nextInt(20_000)) {
      level = !level;
      edges.add(new DriveSignal.Edge(ns, pin, level));
    }
    edges.sort(Comparator.comparingLong(DriveSignal.Edge::ns));
    ProofReport report = prove(driven, new DriveSignal(edges, List.of()), driven.uf2());
    assertThat(report.faults()).isEmpty();
    assertThat(report.passed()).isTrue();
  }

  /**
   * Widths between whole microseconds, at all phases of the state machine's steps: by how much the
   * reading is off. What README and proof promise comes from here.
   */
  @Test
  void widthsAreReadToTheErrorThatIsPromised() throws Exception {
    DrivenShow driven = plain(pulses(2, 1500));
    var pin = driven.job().project().rig().inputs().get(0).pin().orElseThrow();
    List<Boolean> on = new ArrayList<>();
    boolean[] lit = new boolean[1];
    PinListener pins =
        (gpio, level, cycle) -> lit[0] = gpio == 0 ? level == PinListener.Level.HIGH : lit[0];
    Rp2040 chip = new Rp2040(Uf2Reader.read(driven.uf2()), pins);
    chip.run(125_000_000, () -> chip.inputsReadAt() >= 0);
    double highest = 0;
    double lowest = Double.MAX_VALUE;
    long from = chip.inputsReadAt();
    for (int i = 0; i < 250; i++) {
      long width = 1_499_000 + 12L * i;
      long start = from + 5_000_000L * i + 500_000 + i % 25;
      // Two frames: the first switches off.
      chip.drive(pin.number(), true, start);
      chip.drive(pin.number(), false, start + 175_000);
      chip.drive(pin.number(), true, start + 2_500_000);
      chip.drive(pin.number(), false, start + 2_500_000 + width / 8);
      chip.run(from + 5_000_000L * (i + 1) + 300_000, () -> false);
      double us = width / 8 * 8 / 1000.0;
      if (lit[0]) {
        lowest = Math.min(lowest, us);
      } else {
        highest = Math.max(highest, us);
      }
      on.add(lit[0]);
    }
    double promised = Target.of(driven.job().project().rig()).servoErrorUs();
    assertThat(on).contains(true, false);
    // The least that reads as 1,501, and the most that reads as 1,500.
    assertThat(1501 - lowest).isBetween(0.3, promised);
    assertThat(highest - 1500).isBetween(0.3, promised);
  }

  /** Faults of the firmware that each must be found: source, what stands there, what is put in. */
  @ParameterizedTest(name = "{0}: {2}")
  @CsvSource(
      delimiter = ';',
      textBlock =
          """
          rp2040/src/lampwright_inputs.c; levels >> input->pin & 1); ~levels >> input->pin & 1)
          rp2040/src/lampwright_inputs.c; levels >> input->pin & 1); levels >> (input->pin + 1) & 1)
          rp2040/src/lampwright_inputs.c; (first + 3) | FOR(3); (first + 3) | FOR(4)
          rp2040/src/lampwright_inputs.c; (first + 5) | FOR(2); (first + 5) | FOR(1)
          rp2040/src/lampwright_inputs.c; COUNTS_PER_US 5UL; COUNTS_PER_US 4UL
          rp2040/src/lampwright_inputs.c; counts + 1); counts + 4)
          rp2040/src/lampwright_inputs.c; counts + 1); counts - 2)
          rp2040/src/lampwright_inputs.c; pin << 24; (pin + 1) << 24
          rp2040/src/lampwright_inputs.c; = pin << 15; = (pin + 1) << 15
          rp2040/src/lampwright_inputs.c; WAIT_HIGH 0x20A0UL; WAIT_HIGH 0x2020UL
          rp2040/src/lampwright_inputs.c; WAIT_LOW 0x2020UL; WAIT_LOW 0x20A0UL
          rp2040/src/lampwright_inputs.c; MOV_ISR_NOT_X 0xA0C9UL; MOV_ISR_NOT_X 0xA0C1UL
          rp2040/src/lampwright_inputs.c; | PAD_INPUT |; |
          rp2040/src/lampwright_inputs.c; PIO_RESTART(machine) |; 0 |
          rp2040/src/lampwright_inputs.c; pio_divider << 16; pio_divider << 17
          rp2040/src/lampwright_inputs.c; SETTLE_US 25000UL; SETTLE_US 500UL
          rp2040/src/lampwright_inputs.c; number < lampwright_fitted->inputs; number < 1
          rp2040-image/main.c; lampwright_show_start(); (void)0
          rp2040-image/main.c; lampwright_inputs_begin(); (void)0
          """)
  void wrongFirmwareIsFound(String source, String text, String other) throws Exception {
    DrivenShow driven = beside();
    byte[] uf2 = driven.uf2();
    Uf2Program.changed(source, text, other, folder).into(uf2);
    boolean atStart = text.startsWith("WAIT_LOW");
    DrivenShow seen = atStart ? withoutFirst(driven) : driven;
    ProofReport report = prove(seen, atStart ? withPulseUnderWay(seen) : seen.signal(), uf2);
    assertFalse(report.passed(), source + ": " + other);
    assertThat(report.faults()).isNotEmpty();
  }

  /** Another table on the pins than the one that is proved: a wrong pin, a wrong kind. */
  @ParameterizedTest
  @CsvSource({"152, 8", "153, 1", "154, 10", "148, 1", "10, 0"})
  void wrongTableIsFound(int at, int value) throws Exception {
    DrivenShow driven = plain(pulses(30, 1501, 1500, 1499, 1500, 1501, 1499, 1500));
    byte[] uf2 = driven.uf2();
    byte[] table = new byte[216];
    for (int i = 0; i < table.length; i++) {
      table[i] = i == at ? (byte) value : uf2[inFile(i)];
    }
    CRC32 crc = new CRC32();
    crc.update(table, 8, table.length - 8);
    ByteBuffer.wrap(table).order(ByteOrder.LITTLE_ENDIAN).putInt(4, (int) crc.getValue());
    for (int i = 0; i < table.length; i++) {
      uf2[inFile(i)] = table[i];
    }
    assertFalse(prove(driven, uf2).passed());
  }

  /** Where a byte of the table is in a file: blocks of 512 have 256 each, from their byte 32 on. */
  private static int inFile(int at) {
    return (0x8000 + at) / 256 * 512 + 32 + at % 256;
  }
}
