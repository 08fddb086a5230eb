package lampwright.engine.disk;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Folders whose entries survive a power cut. */
public final class Folders {
  private Folders() {}

  /** Makes a folder and those above it, if they are missing, and flushes each new entry. */
  public static void make(Path folder) throws IOException {
    if (Files.isDirectory(folder)) {
      return;
    }
    Path above = folder.toAbsolutePath().getParent();
    if (above != null) {
      make(above);
    }
    Files.createDirectories(folder);
    if (above != null) {
      flush(above);
    }
  }

  /**
   * The same for a folder that is to be written to; messages name it and the reason.
   *
   * @return whether it was missing
   */
  static boolean makeToWrite(Path folder) throws IOException {
    try {
      boolean missing = !Files.isDirectory(folder);
      make(folder);
      return missing;
    } catch (FileAlreadyExistsException file) {
      throw new IOException(FileTroubles.text(folder, "could not make the folder: a file"), file);
    } catch (IOException trouble) {
      throw FileTroubles.clear("could not make the folder", folder, trouble);
    }
  }

  /** Flushes the entries of a folder, where the system can do that for a folder. */
  public static void flush(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException unsupported) {
      return;
    }
  }
}
