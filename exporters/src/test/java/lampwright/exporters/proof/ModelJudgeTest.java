package lampwright.exporters.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.firmware.FirmwareJobs;
import lampwright.exporters.firmware.Rp2040Judge;
import lampwright.exporters.proof.rp2040.PinListener;
import lampwright.exporters.proof.rp2040.Rp2040;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The model of the RP2040 against a general simulator of it: the same file gives the same bits, to
 * the cycle, and the same pulses. When a frame begins hangs on how long the core takes to wake and
 * copy, of which both know only nearly the truth.
 */
class ModelJudgeTest {
  private static final int MILLISECONDS = 160;
  private static final int NS_PER_CYCLE = 8;
  private static final long FRAME_SLACK_NS = 20_000;
  private static final int OUTPUT_PERIOD_NS = 510_000;

  @TempDir static Path folder;
  private static Rp2040Judge judge;

  @BeforeAll
  static void findJudge() {
    judge = new Rp2040Judge(folder);
  }

  static Stream<Arguments> jobs() {
    return Stream.of(
        Arguments.of("one chain", FirmwareJobs.on("rp2040").chain("ws2812b", 9).frames(5).job()),
        Arguments.of(
            "eight chains of different parts",
            FirmwareJobs.on("rp2040")
                .chain("ws2812b", 3)
                .chain("sk6812-rgbw", 5)
                .chain("sk6812-rgb", 2)
                .chain("ws2813", 4)
                .chain("ws2812b", 40)
                .chain("ws2815", 1)
                .chain("sk6812-rgbw", 1)
                .chain("ws2812b", 7)
                .frames(4)
                .job()),
        Arguments.of(
            "chain and outputs",
            FirmwareJobs.on("rp2040").chain("ws2812b", 2).output().output().output().job()));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("jobs")
  void pinsDoTheSame(String name, ProjectJob job) throws Exception {
    ExportJob alone = ExportJob.of(job.project(), job.scenes().get(0), ExportOptions.DEFAULT);
    byte[] uf2 = Rp2040Judge.uf2(alone);
    Rp2040Judge.Run wanted = judge.run(uf2, MILLISECONDS);
    assertThat(wanted.errors()).isEmpty();
    Rp2040Judge.Run found = onModel(uf2);
    assertThat(found.edges().keySet()).isEqualTo(wanted.edges().keySet());
    assertThat(found.stackBytes()).isEqualTo(wanted.stackBytes()).isBetween(50, 500);
    int chains = alone.project().rig().chains().size();
    for (int pin : wanted.edges().keySet()) {
      if (pulses(wanted, pin).isEmpty()) {
        assertSameBursts(pin, wanted, found);
        chains--;
      } else {
        assertThat(pulses(found, pin)).isSubsetOf(pulses(wanted, pin)).isNotEmpty();
      }
    }
    assertThat(chains).isZero();
  }

  private static void assertSameBursts(int pin, Rp2040Judge.Run wanted, Rp2040Judge.Run found) {
    List<Rp2040Judge.Burst> judged = wanted.bursts(pin, 0);
    List<Rp2040Judge.Burst> modelled = found.bursts(pin, 0);
    int frames = Math.min(judged.size(), modelled.size());
    assertThat(frames).as("frames on GP" + pin).isGreaterThan(5);
    for (int f = 0; f < frames; f++) {
      assertThat(modelled.get(f).bits()).as("GP" + pin).isEqualTo(judged.get(f).bits());
      long after = modelled.get(f).ns() - modelled.get(0).ns();
      assertThat(after)
          .as("GP" + pin + ", frame " + f)
          .isCloseTo(
              judged.get(f).ns() - judged.get(0).ns(),
              org.assertj.core.api.Assertions.within(FRAME_SLACK_NS));
    }
  }

  /** Widths of whole pulses, ns; none on a pin that is no output. */
  private static List<Long> pulses(Rp2040Judge.Run run, int pin) {
    List<Rp2040Judge.Edge> edges = run.edges().get(pin);
    List<Long> widths = new ArrayList<>();
    for (int i = 0; i + 2 < edges.size(); i++) {
      if (edges.get(i).high() && edges.get(i + 2).ns() - edges.get(i).ns() == OUTPUT_PERIOD_NS) {
        widths.add(edges.get(i + 1).ns() - edges.get(i).ns());
      }
    }
    return widths;
  }

  private static Rp2040Judge.Run onModel(byte[] uf2) throws Uf2Exception {
    Map<Integer, List<Rp2040Judge.Edge>> edges = new TreeMap<>();
    Rp2040 chip =
        new Rp2040(
            Uf2Reader.read(uf2),
            (pin, level, cycle) -> {
              List<Rp2040Judge.Edge> of = edges.computeIfAbsent(pin, key -> new ArrayList<>());
              boolean high = level == PinListener.Level.HIGH;
              if (high != (!of.isEmpty() && of.get(of.size() - 1).high())) {
                of.add(new Rp2040Judge.Edge(cycle * NS_PER_CYCLE, high));
              }
            });
    chip.run(MILLISECONDS * 125_000L, () -> false);
    edges.values().removeIf(List::isEmpty);
    return new Rp2040Judge.Run(0, "", edges, 0, chip.deepestStackBytes());
  }
}
