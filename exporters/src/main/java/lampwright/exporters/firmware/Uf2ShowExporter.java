package lampwright.exporters.firmware;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Review;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Show;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.ExportTarget;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectExporter;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.packed.encode.Packed;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;
import lampwright.exporters.target.TargetFindings;

/** The situations of a project as a file for the drive of an RP2040 board, with their scenes. */
public final class Uf2ShowExporter implements ProjectExporter {
  /** No scene's file has this name: ids have no underscore. */
  public static final String FILE = "with_situations.uf2";

  /** Keeps nothing, so one serves all. */
  public Uf2ShowExporter() {}

  @Override
  public String key() {
    return Uf2Exporter.KEY;
  }

  @Override
  public String summary() {
    return "the situations for the drive of an RP2040 board, without a compiler (.uf2)";
  }

  /** Whether the scenes of a job are those that situations on such a board need. */
  public static boolean isFor(ProjectJob job) {
    return Uf2Exporter.isFor(job.project().rig()) && job.asksForSituations();
  }

  @Override
  public ExportFacts facts(ProjectJob job) {
    Rig rig = job.project().rig();
    Target target = Target.of(rig);
    List<Finding> findings = new ArrayList<>(Review.errorsOfSituations(job.project()));
    findings.addAll(ExportFacts.refused(key(), ScenePacker.faults(job.tables())));
    findings.addAll(target.refusals(rig));
    findings.addAll(target.inputRefusals(rig));
    job.scenes()
        .forEach(scene -> findings.addAll(TargetFindings.frameTime(target, rig, scene, true)));
    findings.addAll(FirmwareFindings.cautions(key(), rig, target));
    long bytes = job.tables().stream().mapToLong(table -> table.bytes()).sum();
    return new ExportFacts(key(), bytes, List.of(FILE), findings);
  }

  @Override
  public List<Finding> export(ProjectJob job, ExportTarget to, Progress progress)
      throws IOException, CancelledException {
    refuse(facts(job).refusals());
    Rig rig = job.project().rig();
    Target target = Target.of(rig);
    Show show = job.show().orElseThrow();
    Packed packed =
        ScenePacker.pack(key(), job.tables(), Optional.of(show), target.decodeCost(), progress);
    refuse(TargetFindings.programMemory(target, rig, packed.size(), true).stream().toList());
    byte[] flash =
        Uf2Image.of(
            target.rp2040Board(rig).orElseThrow(),
            show.clock().framesPerSecond(),
            packed.data(),
            true);
    try (OutputStream out = to.open(FILE)) {
      Uf2File.write(flash, out);
    }
    return ScenePacker.findings(packed);
  }

  private void refuse(List<Finding> refusals) {
    ExportRefusedException.throwIfAny(key(), Optional.empty(), refusals);
  }
}
