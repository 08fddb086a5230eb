package lampwright.exporters.packed.encode;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import lampwright.engine.review.Finding;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.ExportTarget;
import lampwright.exporters.Exporter;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.play.DecodeCost;

/** One scene packed, proven by decoding before it is written. */
public final class PackedExporter implements Exporter {
  private static final String KEY = "packed";

  private final DecodeCost cost;

  /**
   * Keeps nothing of what it exports, so one serves all.
   *
   * @param cost what playing takes on the slowest controller that the data is for
   */
  public PackedExporter(DecodeCost cost) {
    this.cost = cost;
  }

  @Override
  public String key() {
    return KEY;
  }

  @Override
  public String summary() {
    return "one scene, packed, for the player (.packed)";
  }

  @Override
  public ExportFacts facts(ExportJob job) {
    return new ExportFacts(
        KEY,
        job.table().bytes(),
        List.of(job.fileName(KEY)),
        List.of(),
        ScenePacker.faults(List.of(job.table())));
  }

  @Override
  public List<Finding> export(ExportJob job, ExportTarget target, Progress progress)
      throws IOException, CancelledException {
    ExportRefusedException.throwIfAny(KEY, Optional.of(job.scene().id()), facts(job).refusals());
    Packed packed = ScenePacker.pack(KEY, List.of(job.table()), cost, progress);
    try (OutputStream out = target.open(job.fileName(KEY))) {
      out.write(packed.data());
    }
    return ScenePacker.findings(packed);
  }
}
