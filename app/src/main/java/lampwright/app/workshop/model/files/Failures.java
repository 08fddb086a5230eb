package lampwright.app.workshop.model.files;

import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;

/** Says in words why something that waited for a disk went wrong. */
public final class Failures {
  private Failures() {}

  /** The file and the reason; the library's exceptions often carry only the file's name. */
  public static String words(Throwable failure) {
    if (failure instanceof OutOfMemoryError) {
      return "not enough memory";
    }
    if (failure instanceof FileSystemException known) {
      String reason = known.getReason();
      if (reason == null && known instanceof AccessDeniedException) {
        reason = "permission denied";
      }
      if (reason == null && known instanceof FileAlreadyExistsException) {
        reason = "a file of that name is in the way";
      }
      return known.getFile() + (reason == null ? "" : ": " + reason);
    }
    return failure.getMessage() == null ? failure.getClass().getSimpleName() : failure.getMessage();
  }
}
