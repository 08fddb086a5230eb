package lampwright.exporters.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lampwright.engine.rig.Rig;
import lampwright.engine.time.Ratio;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.TestJobs;
import lampwright.exporters.firmware.FirmwareJobs;
import lampwright.exporters.firmware.Rp2040Judge;
import lampwright.exporters.firmware.Uf2Program;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The proof passes what is right, and finds what is put in wrong. */
class Rp2040ProofTest {
  @TempDir Path folder;

  private static ExportJob job() {
    ProjectJob job =
        FirmwareJobs.on("rp2040")
            .chain("ws2812b", 3)
            .chain("sk6812-rgbw", 5)
            .output()
            .output()
            .frames(4)
            .job();
    return ExportJob.of(job.project(), job.scenes().get(0), ExportOptions.DEFAULT);
  }

  private static ProofReport prove(byte[] uf2, byte[] table) throws Uf2Exception {
    return prove(job(), uf2, table, gpios(job()), Ratio.of(job().scene().framesPerSecond()));
  }

  private static ProofReport prove(
      ExportJob job, byte[] uf2, byte[] table, List<Integer> gpios, Ratio framesPerSecond)
      throws Uf2Exception {
    return new Rp2040Proof(job.project().rig(), gpios, table, framesPerSecond, true).run(uf2);
  }

  private static List<Integer> gpios(ExportJob job) {
    Rig rig = job.project().rig();
    return Stream.concat(
            Target.of(rig).pins(rig).chains().stream(), Target.of(rig).pins(rig).outputs().stream())
        .map(pin -> Integer.valueOf(pin.orElseThrow().name().substring(2)))
        .toList();
  }

  @Test
  void exportedSceneIsProved() throws Exception {
    ProofReport report = SceneProof.run(job(), Optional.empty(), 0);
    assertThat(report.faults()).isEmpty();
    assertThat(report.figures())
        .containsEntry("/framesCompared", "11")
        .containsEntry("/bitsWrong", "0")
        .containsEntry("/bitsOutsideLimits", "0")
        .containsEntry("/dutiesWrong", "0");
    // 3 packages of 3 bytes and 5 of 4 in each frame; a pulse of each of two outputs.
    assertThat(report.passed()).isTrue();
    assertThat(report.figures())
        .containsEntry("/passed", "true")
        .containsEntry("/mcu", "rp2040")
        .containsEntry("/tableFrames", "4")
        .containsEntry("/framesWrong", "0")
        .containsEntry("/bitsCompared", String.valueOf(11 * 8 * (3 * 3 + 5 * 4)))
        .containsEntry("/dutiesCompared", "22")
        .containsEntry("/chains/1/framesCompared", "11")
        .containsEntry("/faultCount", "0")
        .containsKeys("/chains/0/t0h/minNs", "/framePeriod/averageUs", "/decode/worstCycles");
    // A block of 512 bytes holds 256 of flash.
    assertThat(Integer.parseInt(report.figures().get("/memory/flash")))
        .isEqualTo(Rp2040Judge.uf2(job()).length / 2);
  }

  /** Without a chain frames are counted from the first light. */
  @Test
  void outputsAreProvedWithoutChains() throws Exception {
    ProjectJob made = FirmwareJobs.on("rp2040").output().output().frames(4).job();
    ExportJob job = ExportJob.of(made.project(), made.scenes().get(0), ExportOptions.DEFAULT);
    Ratio rate = Ratio.of(job.scene().framesPerSecond());
    byte[] uf2 = Rp2040Judge.uf2(job);
    byte[] table = TestJobs.table(job);
    ProofReport report = prove(job, uf2, table, gpios(job), rate);
    assertThat(report.faults()).isEmpty();
    assertThat(report.figures())
        .containsEntry("/framesCompared", "11")
        .containsEntry("/bitsCompared", "0")
        .containsEntry("/dutiesWrong", "0");
    table[5] ^= 1;
    assertThat(prove(job, uf2, table, gpios(job), rate).faults().get(0))
        .startsWith("output 1, frame 2: ");
  }

  @Test
  void pinsWhereNothingIsFittedAreFound() throws Exception {
    List<Integer> gpios = new ArrayList<>(gpios(job()));
    int pin = gpios.set(3, 28);
    Ratio rate = Ratio.of(job().scene().framesPerSecond());
    ProofReport report = prove(job(), Rp2040Judge.uf2(job()), TestJobs.table(job()), gpios, rate);
    assertFalse(report.passed());
    assertThat(report.faults())
        .contains("pin GP" + pin + " is driven, and nothing is fitted there")
        .contains("output 1, frame 0: pin GP28 is not driven");
  }

  /** In ten frames of 20 ms a hundredth is 2 ms, of which one may be a tick of the clock. */
  @Test
  void otherFrameRateIsFound() throws Exception {
    Ratio rate = Ratio.of(job().scene().framesPerSecond());
    ProofReport report =
        prove(
            job(),
            Rp2040Judge.uf2(job()),
            TestJobs.table(job()),
            gpios(job()),
            rate.over(Ratio.of(99).over(Ratio.of(100))));
    assertFalse(report.passed());
    assertThat(report.faults())
        .singleElement()
        .asString()
        .matches("the frames come every 2000\\d\\.\\d\\d us, expected 19800\\.00");
  }

  /** Against what the linker gave the program; the stack is judged by ModelJudgeTest. */
  @Test
  void workingMemoryIsWhatTheLinkerGaveTheProgram() throws Exception {
    ProofReport report = SceneProof.run(job(), Optional.empty(), 0);
    int linked = new Uf2Program(Uf2Program.SOURCES, folder).staticRamBytes();
    // The last of the variables may end in bytes that only fill a word.
    assertThat(Integer.parseInt(report.figures().get("/memory/ram"))).isBetween(linked - 4, linked);
    assertThat(Integer.parseInt(report.figures().get("/memory/deepestStack"))).isLessThan(4096);
  }

  /** A byte of every chain and output, in every frame, is compared. */
  @Test
  void everyByteOfTheTableIsCompared() throws Exception {
    byte[] uf2 = Rp2040Judge.uf2(job());
    byte[] table = TestJobs.table(job());
    int frameBytes = job().table().layout().bytes();
    for (int at :
        IntStream.range(0, table.length)
            .filter(i -> i % 7 == 0 || i % frameBytes > frameBytes - 4)
            .toArray()) {
      byte[] other = table.clone();
      other[at] ^= 1;
      ProofReport report = prove(uf2, other);
      assertFalse(report.passed(), "byte " + at);
      assertThat(report.faults().get(0)).contains("frame " + at / frameBytes);
    }
  }

  @Test
  void waveformIsWritten() throws Exception {
    java.io.StringWriter out = new java.io.StringWriter();
    SceneProof.run(job(), Optional.of(out), 2);
    assertThat(out.toString()).startsWith("$timescale 1 ns $end\n").contains("#10000\n1");
    // Two frames of 3 x 24 bits of the first chain.
    assertEquals(2 * 72, out.toString().split("\n1!", -1).length - 1);
    assertThat(out.toString())
        .contains("$var wire 1 ! GP" + gpios(job()).get(0) + " $end")
        .contains("$var wire 1 \" GP" + gpios(job()).get(1) + " $end")
        .endsWith("\n0!\n0\"\n");
  }

  /** Faults of the firmware that each must be found: source, what stands there, what is put in. */
  @ParameterizedTest(name = "{0}: {3}")
  @CsvSource(
      delimiter = ';',
      textBlock =
          """
          rp2040/lampwright_start.c; RESET_TIMER); 0); held in reset
          rp2040/lampwright_start.c; PLL_MULTIPLIER 125UL; PLL_MULTIPLIER 100UL; 100.000 MHz
          rp2040/lampwright_start.c; WATCHDOG_TICK_ENABLE | XOSC_MEGAHERTZ; WATCHDOG_TICK_ENABLE; tick was never started
          rp2040/lampwright_start.c; while (!(REGISTER(PLL_SYS_CS) & PLL_LOCK)) {; while (0) {; before it has locked
          rp2040/lampwright_start.c; while (!(REGISTER(XOSC_STATUS) & XOSC_STABLE)) {; while (0) {; before it is stable
          rp2040/src/lampwright_wire.c; PIO_RESTART(machine) |; 0 |; without having been restarted
          rp2040/src/lampwright_wire.c; pio_divider << 16; pio_divider << 15; ns
          rp2040/src/lampwright_wire.c; DMA_REQUEST(PIO_REQUEST_TX(pio, machine)); DMA_REQUEST(4 + PIO_REQUEST_TX(pio, machine)); not all frames
          rp2040/src/lampwright_wire.c; 8UL << 25; 7UL << 25; bits, expected
          rp2040/src/lampwright_outputs.c; lampwright_fitted->pwm_top; lampwright_fitted->pwm_top + 1; a pulse of
          """)
  void wrongFirmwareIsFound(String source, String text, String other, String found)
      throws Exception {
    byte[] uf2 = Rp2040Judge.uf2(job());
    Uf2Program.changed(source, text, other, folder).into(uf2);
    ProofReport report = prove(uf2, TestJobs.table(job()));
    assertFalse(report.passed());
    assertThat(String.join("\n", report.faults())).contains(found);
  }
}
