package lampwright.engine.disk;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import lampwright.engine.check.SafeText;

/**
 * Reads files, bounded. Only regular files are read: a pipe may never end, nor even begin, and a
 * device may be without end.
 */
public final class RegularFile {
  /** Says that a file is none that is read: too large, or no regular file. */
  public static final class Refused extends IOException {
    private static final long serialVersionUID = 1;

    Refused(Path file, String why) {
      super(FileTroubles.text(file, READING + ": " + why));
    }
  }

  private static final String READING = "could not read";

  private RegularFile() {}

  /**
   * What a file holds, all of it.
   *
   * @param max the most bytes that it may hold
   * @throws NoSuchFileException if there is no such file
   * @throws Refused if it is no regular file or too large
   * @throws IOException if it can't be read; as with all of them its message names the file and
   *     says why
   */
  public static byte[] read(Path file, int max) throws IOException {
    byte[] bytes = start(file, max + 1);
    if (bytes.length > max) {
      throw new Refused(file, "it has more than " + max + " bytes");
    }
    return bytes;
  }

  /** The same, as text in UTF-8; what is none becomes replacement characters. */
  public static String text(Path file, int max) throws IOException {
    return new String(read(file, max), StandardCharsets.UTF_8);
  }

  /** At most so many bytes from the start of a file. */
  public static byte[] start(Path file, int count) throws IOException {
    try {
      check(file, Files.readAttributes(file, BasicFileAttributes.class));
      try (InputStream in = Files.newInputStream(file)) {
        return in.readNBytes(count);
      }
    } catch (NoSuchFileException missing) {
      NoSuchFileException clear =
          new NoSuchFileException(
              SafeText.text(file.toString(), SafeText.MAX_NAME),
              null,
              READING + ": there is no such file or folder");
      clear.initCause(missing);
      throw clear;
    } catch (FileSystemException trouble) {
      throw FileTroubles.clear(READING, file, trouble);
    }
  }

  private static void check(Path file, BasicFileAttributes found) throws IOException {
    if (found.isDirectory()) {
      throw new IOException(FileTroubles.text(file, "is a folder, not a project file"));
    }
    if (!found.isRegularFile()) {
      throw new Refused(file, "it is a pipe, a device or the like; it must be a regular file");
    }
  }
}
