package lampwright.exporters;

import java.io.IOException;
import java.util.List;
import lampwright.engine.review.Finding;

/** One export format. Without state of its own, so safe for use by several threads. */
public interface Exporter {
  /** The word for this format on the command line, such as {@code bin}. */
  String key();

  /** What is written, in a line for people, with the endings of its files. */
  String summary();

  /** What can be said of an export without rendering it. */
  ExportFacts facts(ExportJob job);

  /**
   * Writes the files of one scene. Frames are rendered and written one after another; no more than
   * one is held, except where a format says that it packs the whole table. Each stream that the
   * target opens is closed, also when the export fails.
   *
   * @return what only the work has shown and is to be known before the files are used; mostly none
   * @throws ExportRefusedException if {@link #facts} has a fault; nothing was opened
   * @throws IOException whatever the target or its streams throw; files may be incomplete
   * @throws CancelledException if {@code progress} asked for it; files may be incomplete
   */
  List<Finding> export(ExportJob job, ExportTarget target, Progress progress)
      throws IOException, CancelledException;
}
