package lampwright.engine.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;

/** What is done for a file before another takes its place. */
final class Replaced {
  private Replaced() {}

  /** Keeps it under another name too, without a copy where the system can do that. */
  static void keep(Path file, Path as) throws IOException {
    try {
      Files.createLink(as, file);
    } catch (IOException | UnsupportedOperationException noLinks) {
      Files.copy(file, as, StandardCopyOption.COPY_ATTRIBUTES);
    }
  }

  /** Gives its permissions to the one that is to come, where there are such. */
  static void permissions(Path file, Path to) throws IOException {
    PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
    if (view != null && Files.exists(file)) {
      Files.setPosixFilePermissions(to, view.readAttributes().permissions());
    }
  }
}
