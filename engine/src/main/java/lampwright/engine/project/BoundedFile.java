package lampwright.engine.project;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads files of whose length nothing is known. */
final class BoundedFile {
  private BoundedFile() {}

  /**
   * The bytes of a file.
   *
   * @throws IOException if it can't be read, is no file, or is longer than that
   */
  static byte[] read(Path file, int maxBytes) throws IOException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw new IOException(FileTroubles.text(file, "could not read: not a file"));
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(maxBytes + 1);
      if (bytes.length > maxBytes) {
        throw new IOException(
            FileTroubles.text(file, "could not read: longer than " + maxBytes + " bytes"));
      }
      return bytes;
    }
  }
}
