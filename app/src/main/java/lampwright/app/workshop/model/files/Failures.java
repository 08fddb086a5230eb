package lampwright.app.workshop.model.files;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;

/** Says in words why the disk refused something. */
public final class Failures {
  private Failures() {}

  /** The file and the reason; the library's exceptions often carry only the file's name. */
  public static String words(IOException failure) {
    if (failure instanceof FileSystemException known) {
      String reason = known.getReason();
      if (reason == null && known instanceof AccessDeniedException) {
        reason = "permission denied";
      }
      if (reason == null && known instanceof FileAlreadyExistsException) {
        reason = "a file stands in its place";
      }
      return known.getFile() + (reason == null ? "" : ": " + reason);
    }
    return failure.getMessage() == null ? failure.getClass().getSimpleName() : failure.getMessage();
  }
}
