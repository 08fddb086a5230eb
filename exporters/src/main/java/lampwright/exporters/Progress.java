package lampwright.exporters;

/** Hears how far an export has come. */
@FunctionalInterface
public interface Progress {
  /** Hears nothing and never cancels. */
  Progress SILENT = (done, total) -> {};

  /**
   * Called before the first frame and after every one, so it must be quick. A format that packs the
   * whole table counts its work in frames, and may leave some out.
   *
   * @param done frames written, 0 to {@code total}; never falls
   * @param total frames of the scene
   * @throws CancelledException to end the export
   */
  void frames(int done, int total) throws CancelledException;
}
