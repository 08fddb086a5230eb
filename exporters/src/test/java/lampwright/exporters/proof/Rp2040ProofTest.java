package lampwright.exporters.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
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
    Rig rig = job().project().rig();
    List<Integer> gpios =
        Stream.concat(
                Target.of(rig).pins(rig).chains().stream(),
                Target.of(rig).pins(rig).outputs().stream())
            .map(pin -> Integer.valueOf(pin.orElseThrow().name().substring(2)))
            .toList();
    return new Rp2040Proof(rig, gpios, table, Ratio.of(job().scene().framesPerSecond()), true)
        .run(uf2);
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
