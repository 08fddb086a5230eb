package lampwright.app.workshop.disk;

import com.google.common.hash.Hashing;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import lampwright.engine.json.ProjectFiles;

/** Files told apart by what is in them. */
public final class FileHash {
  private FileHash() {}

  /** The SHA-256 of some bytes, as 64 hexadecimal digits. */
  public static String of(byte[] bytes) {
    return Hashing.sha256().hashBytes(bytes).toString();
  }

  /** The hash of what a file holds; empty if there is no such file. */
  public static Optional<String> of(Path file) throws IOException {
    try {
      return Files.notExists(file)
          ? Optional.empty()
          : Optional.of(of(ProjectFiles.contents(file)));
    } catch (NoSuchFileException gone) {
      return Optional.empty();
    }
  }
}
