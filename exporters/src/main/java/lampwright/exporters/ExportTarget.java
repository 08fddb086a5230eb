package lampwright.exporters;

import java.io.IOException;
import java.io.OutputStream;

/** Where the files of an export go. They belong together: keep all of them or none. */
@FunctionalInterface
public interface ExportTarget {
  /**
   * Opens a file for writing. The exporter buffers its writes, and closes the stream before it
   * opens the next. A closed stream is a whole file only if the export returns without an
   * exception.
   *
   * @param fileName one of {@link ExportFacts#files}
   */
  OutputStream open(String fileName) throws IOException;
}
