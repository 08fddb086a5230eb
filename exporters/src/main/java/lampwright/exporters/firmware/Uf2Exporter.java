package lampwright.exporters.firmware;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Rig;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.ExportTarget;
import lampwright.exporters.Exporter;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.encode.Packed;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Rp2040Board;
import lampwright.exporters.target.Target;
import lampwright.exporters.target.TargetFindings;

/** One scene as a file for the drive of an RP2040 board: no compiler is needed. */
public final class Uf2Exporter implements Exporter {
  /** The word for this format. */
  public static final String KEY = "uf2";

  /** Keeps nothing of what it exports, so one serves all. */
  public Uf2Exporter() {}

  @Override
  public String key() {
    return KEY;
  }

  @Override
  public String summary() {
    return "one scene for the drive of an RP2040 board, without a compiler (.uf2)";
  }

  /** Whether a rig's controller takes such files. */
  public static boolean isFor(Rig rig) {
    return Target.of(rig).rp2040();
  }

  @Override
  public ExportFacts facts(ExportJob job) {
    Rig rig = job.project().rig();
    Target target = Target.of(rig);
    List<Finding> findings = new ArrayList<>();
    if (isFor(rig)) {
      findings.addAll(ExportFacts.refused(KEY, ScenePacker.faults(List.of(job.table()))));
      findings.addAll(target.refusals(rig));
      findings.addAll(TargetFindings.frameTime(target, rig, job.scene(), false));
      findings.addAll(FirmwareFindings.cautions(KEY, rig, target));
    } else {
      findings.add(
          Finding.of(Code.UF2_CONTROLLER, new Subject.OneExport(KEY))
              .with("name", Figure.words(target.name()))
              .make());
    }
    return new ExportFacts(KEY, job.table().bytes(), List.of(job.fileName(KEY)), findings);
  }

  @Override
  public List<Finding> export(ExportJob job, ExportTarget to, Progress progress)
      throws IOException, CancelledException {
    refuse(job, facts(job).refusals());
    Rig rig = job.project().rig();
    Target target = Target.of(rig);
    Rp2040Board board = target.rp2040Board(rig).orElseThrow();
    Packed packed = ScenePacker.pack(KEY, List.of(job.table()), target.decodeCost(), progress);
    refuse(job, TargetFindings.programMemory(target, rig, packed.size(), false).stream().toList());
    byte[] flash = Uf2Image.of(board, job.scene().framesPerSecond(), packed.data(), false);
    try (OutputStream out = to.open(job.fileName(KEY))) {
      Uf2File.write(flash, out);
    }
    return ScenePacker.findings(packed);
  }

  private static void refuse(ExportJob job, List<Finding> refusals) {
    ExportRefusedException.throwIfAny(KEY, Optional.of(job.scene().id()), refusals);
  }
}
