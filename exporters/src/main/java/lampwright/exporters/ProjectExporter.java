package lampwright.exporters;

import java.io.IOException;
import java.util.List;
import lampwright.engine.review.Finding;

/**
 * A format that writes scenes of a project together, as one folder. Without state of its own, so
 * safe for use by several threads.
 */
public interface ProjectExporter {
  /** The word for this format on the command line; also the name of the folder. */
  String key();

  /** What is written, in a line for people, with the endings of its files. */
  String summary();

  /**
   * What can be said of an export without rendering it. Its files are named relative to the folder,
   * with {@code /} between the parts.
   */
  ExportFacts facts(ProjectJob job);

  /**
   * Writes the files.
   *
   * @return what only the work has shown and is to be known before the files are used; mostly none
   * @throws ExportRefusedException if {@link #facts} has a fault, or if the rendered scenes turn
   *     out not to fit; nothing was opened
   * @throws IOException whatever the target or its streams throw; files may be incomplete
   * @throws CancelledException if {@code progress} asked for it; files may be incomplete
   */
  List<Finding> export(ProjectJob job, ExportTarget target, Progress progress)
      throws IOException, CancelledException;
}
