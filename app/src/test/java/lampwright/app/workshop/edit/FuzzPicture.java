package lampwright.app.workshop.edit;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;

/**
 * Reads the head of whatever bytes come: its size is within the limits, or it ends too soon. Any
 * other exception is a fault. Entry of Jazzer, which calls a public method of this name.
 */
public final class FuzzPicture {
  private FuzzPicture() {}

  /** Reads one input. */
  public static void fuzzerTestOneInput(byte[] input) {
    try {
      PictureFile.size(new ByteArrayInputStream(input))
          .ifPresent(
              size -> {
                if (Math.min(size.width(), size.height()) < 1
                    || Math.max(size.width(), size.height()) > PictureFile.MAX_SIDE) {
                  throw new IllegalStateException("size " + size);
                }
              });
    } catch (EOFException tooShort) {
      return;
    } catch (IOException other) {
      throw new IllegalStateException("a stream in memory fails", other);
    }
  }
}
