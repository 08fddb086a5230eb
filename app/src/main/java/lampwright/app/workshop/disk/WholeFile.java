package lampwright.app.workshop.disk;

import com.google.common.hash.Hashing;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import lampwright.engine.disk.StagedFiles;
import lampwright.engine.json.ProjectFiles;

/** Files that are written whole or not at all, and told apart by what is in them. */
public final class WholeFile {
  private WholeFile() {}

  /** Writes a text as UTF-8; makes the folder if it is missing. */
  public static void write(Path file, String text) throws IOException {
    Path place = file.toAbsolutePath();
    Path folder = place.getParent();
    if (folder == null) {
      throw new IOException(file + ": is no file");
    }
    try (StagedFiles files = StagedFiles.in(folder)) {
      try (OutputStream out = files.open(String.valueOf(place.getFileName()))) {
        out.write(text.getBytes(StandardCharsets.UTF_8));
      }
      files.commit();
    }
  }

  /** The SHA-256 of some bytes, as 64 hexadecimal digits. */
  public static String hash(byte[] bytes) {
    return Hashing.sha256().hashBytes(bytes).toString();
  }

  /** The hash of what a file holds; empty if there is no such file. */
  public static Optional<String> hash(Path file) throws IOException {
    try {
      return Files.notExists(file)
          ? Optional.empty()
          : Optional.of(hash(ProjectFiles.contents(file)));
    } catch (NoSuchFileException gone) {
      return Optional.empty();
    }
  }
}
