package lampwright.engine.disk;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import lampwright.engine.check.SafeText;

/** Says in plain words why a file could not be read or written. */
public final class FileTroubles {
  private FileTroubles() {}

  /** An exception whose message names the file and the reason. */
  public static IOException clear(String what, Path file, IOException trouble) {
    return new IOException(text(file, what + ": " + reason(trouble)), trouble);
  }

  /** A message that names the file. */
  public static String text(Path file, String what) {
    return SafeText.text(file.toString(), SafeText.MAX_NAME) + ": " + what;
  }

  private static String reason(IOException trouble) {
    if (trouble instanceof NoSuchFileException) {
      return "there is no such file or folder";
    }
    if (trouble instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (trouble instanceof NotDirectoryException) {
      return "not a folder";
    }
    String reason =
        trouble instanceof FileSystemException known && known.getReason() != null
            ? known.getReason()
            : trouble.getMessage();
    return reason == null ? trouble.getClass().getSimpleName() : SafeText.text(reason, 200);
  }
}
