package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.Rig;
import lampwright.engine.time.Ratio;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.TestJobs;
import lampwright.exporters.proof.ProofReport;
import lampwright.exporters.proof.Rp2040Proof;
import lampwright.exporters.target.Rp2040Board;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Rigs of every kind: what the controller can't send is refused by name, all the rest is proved on
 * our model, and the very same files by the general simulator.
 */
class Rp2040RandomRigsTest {
  private static final int RIGS = 60;
  private static final int LEAST_DRIVEN = 50;

  /** The simulator takes its time: each of so many rigs; 1 for all of them. */
  private static final int JUDGED = Integer.getInteger("lampwright.judged", 3);

  @TempDir Path folder;

  private static List<RandomRigs.Case> driven() {
    return RandomRigs.first(RIGS).filter(rig -> rig.impossible().isEmpty()).toList();
  }

  @Test
  void rigsAreDrivenOrRefusedByName() throws Exception {
    assertThat(driven()).hasSizeBetween(LEAST_DRIVEN, RIGS - 1);
    for (RandomRigs.Case rig : RandomRigs.first(RIGS).toList()) {
      List<String> refusals =
          new Uf2Exporter().facts(rig.job()).refusals().stream().map(Finding::text).toList();
      assertThat(refusals).as("rig " + rig.seed()).hasSize(rig.impossible().size() / 2);
      for (int i = 0; i < refusals.size(); i++) {
        assertThat(refusals.get(i))
            .startsWith(rig.impossible().get(2 * i) + ":")
            .contains(" " + rig.impossible().get(2 * i + 1) + ";")
            .endsWith("[line-impossible]");
      }
      if (!refusals.isEmpty()) {
        assertThrows(ExportRefusedException.class, () -> Rp2040Judge.uf2(rig.job()));
      }
    }
  }

  @Test
  void everyRigIsProvedOnTheModel() throws Exception {
    for (RandomRigs.Case rig : driven()) {
      int frames = 2 * rig.job().table().frameCount() + 3;
      ProofReport report = prove(rig.job());
      assertThat(report.faults()).as("rig " + rig.seed()).isEmpty();
      assertThat(report.figures())
          .as("rig " + rig.seed())
          .containsEntry("/bitsWrong", "0")
          .containsEntry("/bitsOutsideLimits", "0")
          .containsEntry("/dutiesWrong", "0");
      assertThat(Long.parseLong(report.figures().get("/framesCompared")))
          .isGreaterThanOrEqualTo(frames);
      assertThat(Long.parseLong(report.figures().get("/bitsCompared")))
          .isGreaterThanOrEqualTo(8L * chainBytes(rig.job()) * frames);
    }
  }

  private static int chainBytes(ExportJob job) {
    return job.table().layout().bytes() - job.project().rig().outputs().size();
  }

  private static ProofReport prove(ExportJob job) throws Exception {
    Rig rig = job.project().rig();
    Rp2040Board board = Target.of(rig).rp2040Board(rig).orElseThrow();
    List<Integer> pins =
        Stream.concat(
                board.chains().stream().map(Rp2040Board.Line::pin), board.outputPins().stream())
            .toList();
    Ratio rate = Ratio.of(job.scene().framesPerSecond());
    return new Rp2040Proof(rig, pins, TestJobs.table(job), rate, true).run(Rp2040Judge.uf2(job));
  }

  @Test
  void generalSimulatorAgrees() throws Exception {
    Rp2040Judge judge = new Rp2040Judge(folder);
    List<RandomRigs.Case> rigs = driven();
    for (int i = 0; i < rigs.size(); i += JUDGED) {
      Rp2040JudgeTest.assertShows(rigs.get(i).job(), judge);
    }
  }
}
